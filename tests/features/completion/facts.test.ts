import { describe, expect, test } from 'vitest';
import { parse } from '../../../server/src/syntax/parse.ts';
import { keywords, type Keyword } from '../../../server/src/model/keywords.ts';
import { plainText } from '../../../server/src/features/completion/template.ts';
import { isOpen, labels, offered, taken } from './offered.ts';

const journal = `
  lot VER-24 Veratrum nigrum, 60 seeds, from own bed, stored dry, at tin 1 slot 1
  split VER-24, A 24 seeds
  lot IRI-25 Iris sibirica, 20 seeds, from "seed exchange, autumn", stored dry, at tin 1 slot 3
  stock G1 2026-01-09, GA3 20 mg, 20 mL, at fridge door
  dilute G2 2026-01-12, from G1 10 mL, to 20 mL
  stock G0 2020-01-09, GA3 20 mg, 20 mL
  regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks
  guide Veratrum, GA3 300 ppm, 12 h, chill 4 C 60 days, source "a list, 2019"
  guide Veratrum nigrum, GA3 2000 ppm, source "too strong"`;

const spot = (line: string) => `${journal}\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`;
const at = (line: string) => labels(offered(spot(line)));

describe('the facts offered', () => {
  test('are those that the line lacks, those that it needs first', () => {
    expect(at('dilute G3 2026-01-19, ')).toEqual(['from … · needed', 'to 20 mL · needed', 'keeps 4 years · common practice', 'at …']);
    expect(at('dilute G3 2026-01-19, from G1 10 mL, ')).toEqual(['to 20 mL · GA3 500 ppm', 'keeps 1 year · common practice', 'at …']);
  });

  test('are for a dilution what it is made from, whatever is typed of “from”', () => {
    expect(at('dilute G3 2026-01-19, fr')).toContain('from … · needed');
  });

  test('are for a stock the packets of powder first: with what they are, what is left, and until when', () => {
    const packets = `
  powder P0 2020-11-02, GA3 1 g
  powder P1 2025-11-02, GA3 1 g, purity 90 %
  powder P2 2026-01-02, GA3K 1 g`;
    const stock = (line: string) => {
      const source = `${packets}\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`;
      const found = offered(source)!;
      return { found: labels(found), taken: found.items.slice(0, 2).map(item => taken(source, item, found)) };
    };
    for (const typed of ['', 'f', 'from', 'P']) {
      expect(stock(`stock G3 2026-01-19, ${typed}`).found.slice(0, 4), typed).toEqual([
        'from P2 · GA3K powder · 1 g left · good until 2030-01-02',
        'from P1 · GA3 powder, purity 90 % · 1 g left · good until 2029-11-02',
        'from P0 · GA3 powder · 1 g left · was good until 2024-11-02',
        'GA3 · gibberellic acid',
      ]);
    }
    expect(stock('stock G3 2026-01-19, f').taken).toEqual(['stock G3 2026-01-19, from P2 20 mg', 'stock G3 2026-01-19, from P1 20 mg']);
    const again = [...stock('stock G3 2026-01-19, from P1 20 mg, ').found, ...stock('stock G3 2026-01-19, GA3 20 mg, ').found];
    expect(again.filter(label => label.startsWith('from'))).toEqual([]);
  });

  test('are for a sowing the seeds that are there', () => {
    expect(at('sow VER-24/A 2026-01-19, ')).toEqual(['24 seeds · all that are left', '18 C', 'at …', 'in …', 'regime …', 'outdoors', 'look again …']);
  });

  test('are taken as they are read in the list, so that a comma typed next stands behind them', () => {
    const heads = [
      'chill VER-24/A 2026-01-19', 'sow VER-24/A 2026-01-19', 'soak VER-24/A 2026-01-19 19:00', 'split VER-24', 'dilute G3 2026-01-19, from G1 10 mL',
      'regime r', 'guide Iris', 'stock G3 2026-01-19', 'judge VER-24 2026-01-19', 'lot GEN-25 Gentiana lutea', 'limit soak', 'count VER-24/A 2026-01-19',
    ];
    const items = heads.flatMap(head => offered(spot(`${head}, `))!.items);
    const shown = items.filter(({ label, write = [label] }) => plainText(write) === label);
    expect(shown.filter(({ write = [] }) => write.some(part => typeof part !== 'string'))).toEqual([]);
    expect(shown.map(({ label }) => label)).toEqual(expect.arrayContaining(['4 C', '24 h', 'to 20 mL', 'B 24 seeds', 'chill 4 C 90 days']));
  });

  test('leave a date open, which only the grower knows; it is a problem until it is filled in', () => {
    const source = spot('lot GEN-25 Gentiana lutea, 24 seeds, ');
    const found = offered(source)!;
    const item = found.items.find(({ label }) => label === 'collected …')!;
    expect(item.write).toEqual(['collected ', { blank: '' }]);
    const line = 'lot GEN-25 Gentiana lutea, 24 seeds, collected ';
    expect(parse(line).problems.map(({ code }) => code)).toEqual(['bad-value']);
    expect(parse(`${line}2025`).problems).toEqual([]);
  });

  test('have no date of an example in them, whatever the record', () => {
    const examples = Object.values(keywords).flatMap(({ facts }) => facts.flatMap(({ shape }) => shape.match(/\b20\d\d(?:-\d\d)*/g) ?? []));
    const heads = [
      'lot A Iris', 'guide Iris', 'stock G9 2026-01-19', 'powder P9 2026-01-19', 'judge VER-24 2026-01-19', 'sow VER-24/A 2026-01-19',
      'move VER-24/A 2026-01-19', 'count VER-24/A 2026-01-19', 'soak VER-24/A 2026-01-19 19:00',
    ];
    const texts = heads.flatMap(head => {
      const found = offered(spot(`${head}, `).replaceAll(/, source "[^"]*"/g, ''))!;
      return found.items.map(({ label, write = [label] }) => plainText(write));
    });
    expect(texts.filter(text => examples.some(date => text.includes(date)))).toEqual([]);
    expect(examples).toContain('2025-09-14');
    expect(texts).toContain('collected ');
  });

  test('are for a soak the own stocks first, those that keep no longer last, then agents', () => {
    const found = at('soak VER-24/A 2026-01-19 19:00, ');
    expect(found.slice(0, 4)).toEqual([
      'G2 · GA3 500 ppm · 20 mL left · good until 2027-01-12', 'G1 · GA3 1000 ppm · 10 mL left · good until 2030-01-09',
      'G0 · GA3 1000 ppm · 20 mL left · was good until 2024-01-09',
      'GA3 · gibberellic acid',
    ]);
    expect(found).toContain('12 h · guide for Veratrum');
    expect(found).toContain('24 h · the limit');
    expect(found).toContain('until 2026-01-20 19:00 · 24 h, the limit');
  });

  test('are no second end for a soak', () => {
    const found = at('soak VER-24/A 2026-01-19 19:00, GA3 500 ppm, 12 h, ');
    expect(found.some(label => /^until|^24 h|^GA3 /.test(label))).toBe(false);
    expect(found).toContain('at …');
  });

  test('are the parts of a split by the next free name', () => {
    expect(at('split IRI-25, ')).toEqual(['A 10 seeds · needed']);
    expect(at('split VER-24, ')).toEqual(['B 24 seeds · needed']);
    expect(at('split VER-24 2026-01-19, B 12 seeds, ')).toEqual(['C 12 seeds']);
    expect(at('split VER-24, B ')).toEqual(['36 seeds · all that is left']);
  });

  test('are estimates where nobody counted, and only there', () => {
    const bag = (line: string) => labels(offered(`${journal}\n  lot BAG-25 Iris\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`));
    expect(at('lot X-1 Iris, ').slice(0, 3)).toEqual(['60 seeds', 'about 60 seeds · not counted', '48 to 72 seeds · not counted']);
    expect(bag('sow BAG-25 2026-01-19, ').slice(0, 3)).toEqual(['24 seeds', 'about 24 seeds · not counted', '19 to 29 seeds · not counted']);
    expect(bag('split BAG-25, ')).toEqual(['A 24 seeds', 'A half · not counted', 'A about 24 seeds · not counted']);
    expect(bag('split BAG-25, A ')).toEqual(['half · not counted', 'about 24 seeds · not counted']);
    expect(at('lot X-1 Iris, about ')).toEqual(['40 seeds']);
    expect(at('sow VER-24/A 2026-01-19, ').filter(label => /about| to /.test(label))).toEqual([]);
  });

  test('are for a stage the next one of the regime, and what guides say', () => {
    expect(labels(offered(`${journal}
  sow VER-24/A 2026-01-11, regime woodland
  warm VER-24/A 2026-01-12, 20 C
  chill VER-24/A 2026-04-19, \n                            ^ here`)).slice(0, 3)).toEqual([
      '4 C, 14 weeks · next in the regime woodland', '4 C', '60 days · guide for Veratrum',
    ]);
  });

  test('stand off from the comma in front of them', () => {
    const found = offered(spot('pot VER-24/A 2026-01-19,'))!;
    expect(taken(spot('pot VER-24/A 2026-01-19,'), found.items[0]!, found)).toBe('pot VER-24/A 2026-01-19, 9 seedlings');
  });

  test('are none in the text of a note, a reminder, a remark and a comment', () => {
    for (const line of ['note VER-24 2026-01-19, at ', 'due VER-24 2026-01-26, look', 'scarify VER-24 2026-01-19, nicked, ', '  at ', '# at ']) {
      expect([line, at(line)]).toEqual([line, []]);
    }
  });
});

describe('strengths', () => {
  test('are those of guides for the plant, then usual ones, none above the limit', () => {
    expect(at('soak VER-24/A 2026-01-19, GA3 ')).toEqual([
      '300 ppm · guide for Veratrum: a list, 2019', '500 ppm · common practice', '250 ppm · common practice', '100 ppm · common practice',
      '1000 ppm · common practice', 'unmeasured · a little powder of unknown strength',
    ]);
  });

  test('begin with the digits that are typed, then come its units', () => {
    expect(at('soak VER-24/A 2026-01-19, GA3 5').slice(0, 3)).toEqual(['500 ppm · common practice', '5 ppm', '5 %']);
  });

  test('stay within a limit of the journal', () => {
    const found = labels(offered(`${journal}\n  limit GA3, 250 ppm, for Veratrum\n  soak VER-24/A 2026-01-19, GA3 \n                               ^ here`));
    expect(found.map(label => label.split(' · ')[0])).toEqual(['250 ppm', '100 ppm', 'unmeasured']);
  });

  test('are no more than dissolves in water', () => {
    const found = labels(offered(`${journal}\n  agent GA3, solubility 0.25 g/L\n  soak VER-24/A 2026-01-19, GA3 \n                               ^ here`));
    expect(found.map(label => label.split(' · ')[0])).toEqual(['250 ppm', '100 ppm', 'unmeasured']);
  });

  test('are volumes behind a stock, and masses for a new one', () => {
    expect(at('soak VER-24/A 2026-01-19, G1 5')).toEqual(['5 mL', '5 L', '5 uL']);
    expect(at('stock G9 2026-01-19, GA3 20').slice(0, 2)).toEqual(['20 mg', '20 g']);
  });
});

describe('the words behind the one that begins a fact', () => {
  test('are places: the next free slot, then those in use with what lies there', () => {
    expect(at('sow VER-24/A 2026-01-19, at ')).toEqual([
      'tin 1 slot 2 · the next free slot', 'fridge door · G1', 'tin 1 slot 1 · VER-24', 'tin 1 slot 3 · IRI-25',
    ]);
    expect(at('sow VER-24/A 2026-01-19, at tin 1 s').map(label => label.split(' · ')[0])).toEqual([
      'tin 1 slot 2', 'tin 1 slot 1', 'tin 1 slot 3',
    ]);
  });

  test('are sources seen before, in quotation marks where they hold a comma', () => {
    expect(at('lot X-1 Iris, from ')).toEqual(['own bed', '"seed exchange, autumn"']);
    expect(at('lot X-1 Iris, stored ')).toEqual(['dry']);
    expect(at('lot X-1 Iris, stored d')).toEqual(['dry']);
  });

  test('are the classes of dormancy with their meaning', () => {
    expect(at('lot X-1 Iris, dormancy m')).toEqual([
      'MD · morphological: the embryo is small', 'MPD · morphological and physiological',
    ]);
  });

  test('are regimes with their stages', () => {
    expect(at('sow VER-24/A 2026-01-19, regime ')).toEqual(['woodland · warm 20 C 12 weeks, chill 4 C 14 weeks']);
  });

  test('are the end of a soak at the limit, in the zone of the journal', () => {
    expect(labels(offered(`
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-03-28 19:00, water, until 
                                                ^ here
    `))).toEqual(['2026-03-29 20:00 · 24 h, the limit', '2026-03-29 08:00 · 12 h']);
  });

  test('are stocks for a dilution, then a volume', () => {
    expect(at('dilute G3 2026-01-19, from ')[0]).toBe('G2 · GA3 500 ppm · 20 mL left · good until 2027-01-12');
    expect(at('dilute G3 2026-01-19, from G1 5')).toEqual(['5 mL', '5 L', '5 uL']);
  });
});

describe('a fact that is taken', () => {
  const lines: Partial<Record<Keyword, string>> = {
    lot: 'lot X-1 Iris', split: 'split VER-24', limit: 'limit GA3', regime: 'regime x', guide: 'guide Iris', agent: 'agent kelp',
    left: 'left G1 2026-01-19',
  };
  const heads = (Object.keys(keywords) as Keyword[]).filter(keyword => keywords[keyword].facts.length > 0)
    .map(keyword => lines[keyword] ?? `${keyword} ${/stock|dilute|powder/.test(keyword) ? 'G9' : 'VER-24/A'} 2026-01-19`);

  test.each(heads)('leaves no mistake on the line: %s', head => {
    const source = spot(`${head}, `);
    const found = offered(source);
    for (const how of ['blanks', 'plain'] as const) {
      for (const item of found?.items ?? []) {
        // Without blanks to jump to, the number is typed in front of the word.
        if (how === 'plain' && item.write?.some(isOpen)) continue;
        const codes = parse(taken(source, item, found!, how)).problems.map(({ code }) => code).filter(code => code !== 'missing-fact');
        expect([item.label, how, codes]).toEqual([item.label, how, []]);
      }
    }
  });
});
