import { parse, type DefaultTreeAdapterTypes } from 'parse5';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { placesData } from '../../server/src/report/places/data.ts';
import { placesMap, type MapOptions } from '../../server/src/report/places/map.ts';
import { placesMarkdown } from '../../server/src/report/places/markdown.ts';
import { placesSheet } from '../../server/src/report/places/sheet.ts';
import { placesText } from '../../server/src/report/places/text.ts';
import { readFixture } from '../support/fixture.ts';
import { at } from './helpers.ts';

const SOURCE = `
  --- 2026.germ
  lot PAR-26 Paris quadrifolia, 60 seeds, at tin
  split PAR-26, A 20 seeds, B 20 seeds
  sow PAR-26/A 2026-01-06, 12 seeds, at bag 3 slot 10
  sow PAR-26/B 2026-01-06, 20 seeds, at bag 3 slot 2
  chill PAR-26/B 2026-01-10, 4 C, 90 days, at fridge
  warm PAR-26/B 2026-04-10, 18 C, at shelf 1
  --- stocks.germ
  stock G1 2026-01-09, GA3 20 mg, 20 mL, at fridge door slot 1
  lot IRI-26 Iris alba, 20 seeds
  sow IRI-26 2026-01-06, 20 seeds
`;

function mapOf(source: string, options: MapOptions) {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  return placesMap(journal, options);
}

const now = at('2026-01-20', 8);
const rows = (options: MapOptions, source = SOURCE) =>
  mapOf(source, options).containers.map(({ name, rows: all }) => [name, ...all.map(({ slot, id, part }) => `${slot ?? '-'} ${id} ${part}`)]);

describe('the map of places', () => {
  it('has each container with what lies in its slots now, by their numbers', () => {
    expect(rows({ now })).toEqual([
      ['bag 3', '10 PAR-26/A sown'], ['fridge', '- PAR-26/B all'], ['fridge door', '1 G1 all'],
      ['tin', '- PAR-26 all', '- PAR-26/A rest'],
    ]);
    expect(rows({ now: at('2026-01-07') })[0]).toEqual(['bag 3', '2 PAR-26/B all', '10 PAR-26/A sown']);
    expect(rows({ now: at('2026-04-10') }).map(([name]) => name)).toContain('shelf 1');
  });

  it('names open batches in use for which no place is written', () => {
    const { nowhere } = mapOf(SOURCE, { now });
    expect(nowhere.map(({ path }) => path)).toEqual(['IRI-26']);
    expect(mapOf(`${SOURCE}  discard IRI-26 2026-01-08`, { now }).nowhere).toEqual([]);
  });

  it('is of what the files asked for say something of', () => {
    expect(rows({ now, files: ['stocks.germ'] })).toEqual([['fridge door', '1 G1 all']]);
  });

  it('says nothing of what is planned as if it had been done', () => {
    const row = mapOf(SOURCE, { now }).containers.find(({ name }) => name === 'fridge')!.rows[0]!;
    expect(row.treatment).toBe('4 C 90 days');
  });

  it('shows both of two in one slot', () => {
    expect(rows({ now }, `
      lot A Iris alba, 5 seeds, at bag 1 slot 2
      lot B Iris alba, 5 seeds, at Bag 1 slot 02
    `)).toEqual([['bag 1', '2 A all', '2 B all']]);
  });
});

describe('the map as text and as Markdown', () => {
  it('is a table for each container', () => {
    expect(placesText([mapOf(SOURCE, { now })])).toBe(`Places as of 2026-01-20 08:00

bag 3
  Slot  What      Plant              Treatment  Since
  10    PAR-26/A  Paris quadrifolia  untreated  2026-01-06

fridge
  What      Plant              Treatment    Since
  PAR-26/B  Paris quadrifolia  4 C 90 days  2026-01-10

fridge door
  Slot  What  Plant  Treatment     Since
  1     G1           GA3 1000 ppm  2026-01-09

tin
  What                 Plant              Treatment  Since
  PAR-26               Paris quadrifolia  untreated  –
  PAR-26/A (not sown)  Paris quadrifolia  untreated  –

No record gives a place for IRI-26.
`);
  });

  it('escapes what the journal says in Markdown, and says where there is nothing', () => {
    expect(placesMarkdown([mapOf('lot A Iris alba, at <b>bag</b> | 1 slot 2', { now })])).toBe(
      '# Places as of 2026-01-20 08:00\n\n## \\<b\\>bag\\</b\\> \\| 1\n\n| Slot | What | Plant | Treatment | Since |\n'
      + '| :-- | :-- | :-- | :-- | :-- |\n| 2 | A | Iris alba | untreated | – |\n');
    expect(placesMarkdown([mapOf('', { now })])).toContain('No record puts anything anywhere.');
  });
});

type Node = DefaultTreeAdapterTypes.ChildNode | DefaultTreeAdapterTypes.Document;

/** Read back by the parser of browsers: the elements by name, and the text of each. */
function read(html: string): { names: string[]; text: (name: string) => string[]; faults: string[] } {
  const faults: string[] = [];
  const found: { name: string; text: string }[] = [];
  const textOf = (node: Node): string =>
    ('value' in node ? node.value : 'childNodes' in node ? node.childNodes.map(textOf).join('') : '');
  const visit = (node: Node): void => {
    if ('tagName' in node) found.push({ name: node.tagName, text: textOf(node) });
    if ('childNodes' in node) node.childNodes.forEach(visit);
  };
  visit(parse(html, { onParseError: ({ code }) => faults.push(code) }));
  const text = (name: string) => found.filter(each => each.name === name).map(each => each.text);
  return { names: found.map(({ name }) => name), text, faults };
}

describe('the sheet', () => {
  it('has each container in a box of its own, with its slots as heads of the rows', () => {
    const { text, faults } = read(placesSheet([mapOf(SOURCE, { now })]));
    expect(faults).toEqual([]);
    expect(text('h2')).toEqual(['bag 3', 'fridge', 'fridge door', 'tin']);
    expect(text('th')).toEqual(['10', '1']);
    expect(text('b')).toEqual(['PAR-26/A', 'PAR-26/B', 'G1', 'PAR-26', 'PAR-26/A (not sown)']);
    expect(text('p')).toEqual(['No record gives a place for IRI-26.']);
  });

  it('shows the journal’s text as it was written and makes no element of it', () => {
    const known = new Set(['html', 'head', 'meta', 'title', 'style', 'body', 'h1', 'section', 'h2', 'table', 'tbody', 'tr', 'th', 'td', 'b', 'br', 'p']);
    const text = fc.string({ unit: fc.constantFrom('<', '>', '&', '"', '\'', '/', 'b', '!', '-', '=', 'x', ' ', ';', '#', '種'), minLength: 1, maxLength: 30 });
    fc.assert(fc.property(text.map(each => `x${each}x`), place => {
      const map = mapOf(`lot A Iris alba, at "${place.replaceAll('"', '\'')}"`, { now });
      const html = read(placesSheet([map]));
      expect(html.faults).toEqual([]);
      for (const name of html.names) expect(known).toContain(name);
      expect(html.text('h2')).toEqual(map.containers.map(({ name }) => name));
    }));
    expect(placesSheet([])).toContain('http-equiv="Content-Security-Policy" content="default-src \'none\';');
    expect(read(placesSheet([mapOf('lot A <script>alert(1)</script>, at x', { now })])).text('td')[0]).toContain('<script>alert(1)</script>');
  });
});

describe('the map as data', () => {
  it('has what lies where, with the record that says so', () => {
    const { containers, ...head } = placesData(mapOf(SOURCE, { now })) as { containers: { contents: object[] }[] };
    expect(head).toEqual({ now: '2026-01-20T08:00', zone: null, withoutPlace: ['IRI-26'] });
    expect(containers[0]).toEqual({
      name: 'bag 3', contents: [{
        place: 'bag 3 slot 10', slot: '10', id: 'PAR-26/A', plant: 'Paris quadrifolia', part: 'sown', what: null, treatment: 'untreated',
        since: '2026-01-06', file: '2026.germ', line: 3,
      }],
    });
  });
});
