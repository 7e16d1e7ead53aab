import { defaultTreeAdapter, parseFragment, type DefaultTreeAdapterMap } from 'parse5';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import { subjectIdOf } from '../../../server/src/journal/mentions.ts';
import { Journal } from '../../../server/src/journal/journal.ts';
import { panelPage, type PanelView } from '../../../server/src/report/panel/panel.ts';
import { text } from '../../support/arbitrary-edits.ts';
import { at } from '../helpers.ts';

const JOURNAL = `lot GEN-25 Gentiana <lutea>, 48 seeds, at tin 1
split GEN-25, A 20 seeds, B 20 seeds
soak GEN-25/A 2026-01-05 18:00, GA3 500 ppm, 24 h
sow GEN-25/A 2026-01-06 18:00, at tray 1
sow GEN-25/B 2026-01-06 18:00, at tray 2
count GEN-25/A 2026-01-20, 9
count GEN-25/A 2026-02-10, 9
count GEN-25/B 2026-02-10, 7
`;
const now = at('2026-02-12');
const views: readonly PanelView[] = ['lot', 'plant', 'season', 'places'];

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

function read(html: string): { elements: Element[]; faults: string[] } {
  const faults: string[] = [];
  const elements: Element[] = [];
  const visit = (node: DefaultTreeAdapterMap['node']): string => {
    if (defaultTreeAdapter.isTextNode(node)) return node.value;
    const inner = 'childNodes' in node ? node.childNodes.map(visit).join('') : '';
    if (defaultTreeAdapter.isElementNode(node)) {
      const attributes = Object.fromEntries(node.attrs.map(({ name, value }) => [name, value]));
      elements.push({ name: node.tagName, attributes, text: inner });
    }
    return inner;
  };
  visit(parseFragment(html, { onParseError: ({ code }) => faults.push(code) }));
  return { elements, faults };
}

function shown(source: string, view: PanelView, id = 'GEN-25', width = 560) {
  const journal = new Journal();
  journal.set('a.germ', source);
  const book = new ProblemBook(journal);
  book.update(now);
  const lot = journal.lot(id) ?? [...journal.lots()][0];
  const page = panelPage(journal, book, now, {
    view, lot, width, height: 640, wayTo: ({ number, store }) => `${number} ${store.name}`,
  });
  return { ...page, journal, ...read(page.html) };
}

/** The records that the marks of a class lead to. */
function records(view: PanelView, name: string): string[] {
  const lines = JOURNAL.split('\n');
  return shown(JOURNAL, view).elements
    .filter(({ attributes }) => attributes.class === name && attributes['data-way'] !== undefined)
    .map(({ attributes }) => lines[Number(attributes['data-way']!.split(' ')[0])]!);
}

describe('the panel of pictures', () => {
  test('shows of a lot the picture, the verdict and one table, in that order, before what unfolds', () => {
    const { html, title, elements } = shown(JOURNAL, 'lot');
    expect(title).toBe('GEN-25 Gentiana <lutea>');
    const order = ['<svg', 'class="verdict"', '<table', '<details'].map(part => html.indexOf(part));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
    expect(html.slice(0, order[3]).split('<table')).toHaveLength(2);
    // Where it is narrow, the table goes on below itself: nothing needs a scroll bar.
    const narrow = shown(JOURNAL, 'lot', 'GEN-25', 300).html;
    expect(narrow.slice(0, narrow.indexOf('<details')).split('<table').length).toBeGreaterThan(2);
    expect(elements.find(({ attributes }) => attributes.class === 'verdict')!.text).toMatch(/^GA3 500 ppm 24 h \(A\) against /);
  });

  test('leads from each look, bar, mark and slot to its record, and says it', () => {
    expect(records('lot', 'look').toSorted()).toEqual([
      'count GEN-25/A 2026-01-20, 9', 'count GEN-25/A 2026-02-10, 9', 'count GEN-25/B 2026-02-10, 7',
    ]);
    expect(records('plant', 'difference')).toEqual(['lot GEN-25 Gentiana <lutea>, 48 seeds, at tin 1']);
    expect(records('season', 'soak')).toEqual(['soak GEN-25/A 2026-01-05 18:00, GA3 500 ppm, 24 h']);
    expect(records('season', 'mark')).toEqual(expect.arrayContaining(['sow GEN-25/B 2026-01-06 18:00, at tray 2']));
    expect(records('places', 'slot')).toEqual(expect.arrayContaining(['sow GEN-25/A 2026-01-06 18:00, at tray 1']));
    const [look] = shown(JOURNAL, 'lot').elements.filter(({ attributes }) => attributes.class === 'look');
    expect(look!.text).toContain('· count GEN-25/');
  });

  test('leads from each dot of a ladder to its soak, and draws a plant over its winters', () => {
    const ladder = JOURNAL.replace('B 20 seeds\n', 'B 20 seeds, C 8 seeds\n') + [
      'soak GEN-25/C 2026-01-05 18:00, GA3 1000 ppm, 24 h', 'sow GEN-25/C 2026-01-06 18:00', 'count GEN-25/C 2026-02-10, 7', ''].join('\n');
    const rungs = shown(ladder, 'lot').elements.filter(({ attributes }) => attributes.class === 'rung');
    expect(rungs.map(({ attributes }) => attributes['data-way'])).toEqual(['2 a.germ', '8 a.germ']);
    const { elements } = shown(ladder, 'plant');
    expect(elements.filter(({ name }) => name === 'svg')).toHaveLength(2);
    expect(elements.some(({ attributes }) => attributes.class === 'look' && attributes['data-way'] !== undefined)).toBe(true);
  });

  test('gives each picture a name, a description, and its numbers as a table', () => {
    for (const view of views) {
      const { elements } = shown(JOURNAL, view);
      const svg = elements.filter(({ name }) => name === 'svg');
      expect(svg.length, view).toBeGreaterThan(0);
      for (const { attributes } of svg) {
        const [title, desc] = attributes['aria-labelledby']!.split(' ');
        expect(elements.find(({ attributes: { id } }) => id === title)!.text).not.toBe('');
        expect(elements.find(({ attributes: { id } }) => id === desc)!.text).not.toBe('');
      }
      expect(elements.some(({ name, text: words }) => name === 'summary' && words === 'The numbers of the picture')).toBe(true);
    }
  });

  test('has the photos of a lot below its table, by batch and day, with a name until somebody puts the picture in', () => {
    const source = `${JOURNAL}photo GEN-25/A 2026-02-01, b & <c>.jpg\nphoto GEN-25/A 2026-01-20, ../a.jpg\nphoto GEN-25, /c.jpg\n`;
    const { elements, html, photos } = shown(source, 'lot');
    const cells = elements.filter(({ attributes }) => attributes.class === 'photo');
    expect(cells.map(({ text: words, attributes }) => [words, attributes['aria-label'], attributes['data-way']])).toEqual([
      ['c.jpgno date', 'Photo of GEN-25, Gentiana <lutea>, c.jpg', '10 a.germ'],
      ['a.jpg2026-01-20, day 14', 'Photo of GEN-25/A, Gentiana <lutea>, 2026-01-20, day 14, a.jpg', '9 a.germ'],
      ['b & <c>.jpg2026-02-01, day 26', 'Photo of GEN-25/A, Gentiana <lutea>, 2026-02-01, day 26, b & <c>.jpg', '8 a.germ'],
    ]);
    expect(cells.map(({ attributes }) => photos[Number(attributes['data-photo'])]!.path)).toEqual([undefined, '../a.jpg', 'b & <c>.jpg']);
    expect(elements.flatMap(({ name, text: words }) => (name === 'h2' ? [words] : []))).toEqual(['Photos of GEN-25', 'Photos of GEN-25/A']);
    expect(html.indexOf('<table')).toBeLessThan(html.indexOf('class="photos"'));
    expect(html.indexOf('class="photos"')).toBeLessThan(html.indexOf('<details'));
  });

  test('says what is missing where there is nothing to draw', () => {
    expect(shown('lot I-1 Iris alba, 10 seeds\n', 'lot').html).toContain('There is nothing to draw yet');
    expect(shown('lot I-1 Iris alba, 10 seeds\n', 'season').html).toContain('No batch is open.');
    expect(shown('lot I-1 Iris alba, 10 seeds\n', 'places').html).toContain('No record says where something is.');
    expect(shown('# nothing\n', 'plant').html).toContain('Put the cursor on a line about a lot or a batch.');
  });

  test('is sound HTML that runs and loads nothing, whatever stands in the journal', () => {
    fc.assert(fc.property(text, fc.constantFrom(...views), (source, view) => {
      const { elements, faults } = shown(source, view);
      expect(faults).toEqual([]);
      const risky = ['script', 'link', 'img', 'iframe', 'object', 'style', 'a', 'image', 'use', 'foreignobject'];
      expect(elements.filter(({ name }) => risky.includes(name))).toEqual([]);
      expect(elements.flatMap(({ attributes }) => Object.keys(attributes)).filter(name => /^on|^style$|href/.test(name))).toEqual([]);
    }));
  });

  test('shows hostile text as it was written', () => {
    const hostile = '<img src=x onerror=alert(1)>"\'><script>x</script>';
    const source = JOURNAL.replace('Gentiana <lutea>', hostile);
    const { elements } = shown(source, 'lot');
    expect(elements.find(({ name }) => name === 'h1')!.text).toBe(`GEN-25 ${hostile}`);
  });

  test('has marks that lead to records of the journal only, about what is shown', () => {
    const number = fc.integer({ min: 0, max: 6 });
    const line = fc.oneof(
      fc.tuple(fc.constantFrom('A', 'B'), number, number).map(([batch, day, seeds]) => `count GEN-25/${batch} 2026-02-1${day}, ${seeds}`),
      fc.constantFrom('# a comment', '', 'day 2026-02-11', 'count GEN-25/A, 1', '  a remark', 'move GEN-25/A 2026-02-11, at box 3'),
    );
    fc.assert(fc.property(fc.array(line, { maxLength: 12 }), fc.constantFrom(...views), (more, view) => {
      const { elements, journal } = shown(`${JOURNAL}${more.join('\n')}\n`, view);
      const ways = elements.flatMap(({ attributes }) => attributes['data-way'] ?? []);
      // A count without a date leaves nothing to draw of a lot, but the pots stay where they are.
      if (view === 'places') expect(ways.length).toBeGreaterThan(0);
      for (const way of ways) {
        const [at, file] = way.split(' ');
        const { record } = journal.files.get(file!)!.text.at(Number(at)).content;
        expect(record && subjectIdOf(record)).toBe('GEN-25');
      }
    }));
  });
});
