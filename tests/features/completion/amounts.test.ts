import { describe, expect, test } from 'vitest';
import { keywords, type Keyword } from '../../../server/src/model/keywords.ts';
import { parse } from '../../../server/src/syntax/parse.ts';
import { labels, offered, taken } from './offered.ts';

const journal = `
  lot VER-24 Veratrum nigrum, 60 seeds
  split VER-24, A 24 seeds
  sow VER-24/A 2026-01-10, 24 seeds
  count VER-24/A 2026-01-15, 5, 1 died
  pot VER-24/A 2026-01-16, 2 seedlings
  lot IRI-25 Iris sibirica, 20 seeds
  stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL
  stock K1 2026-01-09, GA3K 100 mg, purity 75 % salt, 100 mL
  dilute G2 2026-01-12, from G1 10 mL, to 20 mL
  limit stock, 3 years
  regime woodland, warm 20 C 12 weeks`;

const spot = (line: string, above = journal) => `${above}\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`;
const at = (line: string) => labels(offered(spot(line)));

describe('amounts', () => {
  test('of a stock are a mass, then how often its packet was halved', () => {
    expect(at('stock G3 2026-01-19, GA3 ')).toEqual(['100 mg', '100 mg halved 2 times']);
    expect(at('stock G3 2026-01-19, peroxide ')).toEqual(['3 %']);
    expect(at('stock G3 2026-01-19, GA3 400 mg ')).toEqual(['halved 2 times · a packet, divided by eye']);
    expect(at('stock G3 2026-01-19, GA3 400 mg ha')).toEqual(['halved 2 times · a packet, divided by eye']);
    expect(at('stock G3 2026-01-19, GA3 400 mg halved ')).toEqual(['1 time', '2 times', '3 times']);
    expect(at('stock G3 2026-01-19, GA3 400 mg halved 2')).toEqual(['2 times']);
    expect(at('stock G3 2026-01-19, GA3 400 mg halved 2 times ')).toEqual([]);
    expect(at('stock G3 2026-01-19, peroxide 3 % ')).toEqual([]);
  });

  test('of a purity are those of the same agent before, and what they are of where there are two forms', () => {
    expect(at('stock G3 2026-01-19, GA3 20 mg, purity ')).toEqual(['90 % · as G1']);
    expect(at('stock G3 2026-01-19, GA3K 20 mg, purity 7')).toEqual(['75 % salt · as K1', '7 %']);
    expect(at('stock G3 2026-01-19, KNO3 20 mg, purity ')).toEqual(['90 %']);
    expect(at('stock G3 2026-01-19, GA3 20 mg, purity 90 % ')).toEqual([
      'acid · the percentage is of the acid', 'salt · the percentage is of the salt',
    ]);
    expect(at('stock G3 2026-01-19, GA3 20 mg, purity 90 % s').length).toBe(1);
    expect(at('stock G3 2026-01-19, KNO3 20 mg, purity 90 % ')).toEqual([]);
    expect(at('stock G3 2026-01-19, GA3K 20 mg, ')[0]).toBe('purity 75 % salt · as K1');
  });

  test('of what keeps are years', () => {
    expect(at('stock G3 2026-01-19, GA3 20 mg, keeps ')).toEqual(['3 years · the limit']);
    expect(at('stock G3 2026-01-19, GA3 20 mg, keeps 6')).toEqual(['6 years', '6 months', '6 weeks', '6 days']);
    expect(at('stock G3 2026-01-19, GA3 20 mg, keeps 1')[0]).toBe('1 year');
    expect(at('stock G3 2026-01-19, GA3 20 mg, ')).toContain('keeps 3 years · the limit');
  });

  test('of a dilution are what is left of the stock, and what makes a strength that is in use', () => {
    expect(at('dilute G3 2026-01-19, from G1 ')).toEqual(['8 mL · all that is left']);
    expect(at('dilute G3 2026-01-19, from K1 ')).toEqual(['10 mL', '100 mL · all that is left']);
    expect(at('dilute G3 2026-01-19, from G1 5 mL, to ')).toEqual(['10 mL · GA3 500 ppm', '20 mL · GA3 250 ppm', '50 mL · GA3 100 ppm']);
    expect(at('dilute G3 2026-01-19, from G1 5 mL, to 2')).toEqual(['20 mL · GA3 250 ppm', '2 mL', '2 L', '2 uL']);
    expect(at('dilute G3 2026-01-19, from G1 5 mL, ')[0]).toBe('to 10 mL · GA3 500 ppm');
    // A volume that nobody can measure is not offered: 4 × 750 / 500.
    expect(at('dilute G3 2026-01-19, from K1 1.111 mL, to ')).toEqual([]);
  });

  test('of what is taken from a stock for a soak are all that is left, at most where some was not measured', () => {
    expect(at('soak IRI-25 2026-01-19, G1 ')).toEqual(['8 mL · all that is left']);
    expect(labels(offered(`${journal}
  soak VER-24 2026-01-18, G1
  soak IRI-25 2026-01-19, G1 
                            ^ here`))).toEqual(['8 mL · at most: some was taken without a volume']);
  });

  test('of a stage are a temperature and a time, each once', () => {
    expect(at('regime x, chill ')).toEqual(['4 C', '90 days']);
    expect(at('regime x, warm 60 days ')).toEqual(['20 C']);
    expect(at('regime x, chill 4 C 9')).toEqual(['9 days', '9 weeks', '9 months', '9 years', '9 h', '9 min']);
    expect(at('regime x, chill 14 weeks 4')).toEqual(['4 C', '4 F']);
    expect(at('regime x, chill 4').slice(0, 3)).toEqual(['4 C', '4 F', '4 days']);
    expect(at('regime x, chill 4 C 90 days ')).toEqual([]);
  });

  test('of a limit are what holds without it', () => {
    expect(at('limit soak, ')[0]).toBe('24 h · default: common practice, no source');
    expect(at('limit count, ')[0]).toBe('7 days · default: common practice, no source');
    expect(at('limit stock, ')).toEqual(['3 years · the “limit” record in journal.germ']);
    expect(at('limit stock, 3')[0]).toBe('3 years');
    expect(at('limit count, 3')[0]).toBe('3 days');
  });

  test('of seedlings are those that are there', () => {
    expect(at('pot VER-24/A 2026-01-19, ')[0]).toBe('3 seedlings · at most 3 more');
    expect(at('apply VER-24/A 2026-01-19, GA3 100 ppm, ')).toContain('4 seedlings · germinated, less those that died');
  });

  test('of a part are never more than is left', () => {
    expect(at('split IRI-25 2026-01-19, ')).toEqual(['A 10 seeds · needed']);
    expect(at('split IRI-25 2026-01-19, A 12 seeds, ')).toEqual(['B 8 seeds']);
    expect(at('split IRI-25 2026-01-19, A 12 seeds, B 8 seeds, ')).toEqual([]);
  });

  test('of one are singular', () => {
    expect(at('sow VER-24 2026-01-19, 1').slice(0, 2)).toEqual(['1 seed', '1 C']);
    expect(at('lot X-1 Iris, 1')).toEqual(['1 seed']);
    expect(at('split VER-24, B 1')).toEqual(['1 seed']);
  });

  test('of a total are what stands there so far', () => {
    expect(at('count VER-24/A 2026-01-19, =').slice(0, 2)).toEqual([
      '=5 germinated · so far; a total of 24 at most', '=0 emerged · so far; a total of 24 at most',
    ]);
  });

  test('of a solubility are strengths', () => {
    expect(at('agent kelp, solubility 3')).toEqual(['3 g/L', '3 mg/L', '3 %']);
  });
});

/** Every fact that a record takes, as its example and in its longer forms; the heads that make them possible. */
const longer: Partial<Record<Keyword, readonly string[]>> = {
  stock: ['GA3 400 mg halved 2 times', 'from P1 halved 2 times', 'purity 90 % acid', 'peroxide 3 %'],
  soak: ['G1 10 mL', 'P1 10 mg', 'P1 unmeasured', 'GA3 unmeasured', 'KNO3 0.2 %'],
  apply: ['G1 10 mL', '5 mL'], count: ['=9 germinated'], sow: ['20/10 C'],
};
const subjects: Partial<Record<Keyword, string>> = {
  lot: 'X-1 Iris', split: 'VER-24', stock: 'G9 2026-01-19', powder: 'P9 2026-01-19', dilute: 'G9 2026-01-19', regime: 'x', guide: 'Iris', agent: 'word',
  left: 'G1 2026-01-19',
};

const richer = `${journal}
  powder P1 2025-11-02, GA3 1 g, purity 90 %, at freezer
  lot PRI-25 Primula alpicola, 30 seeds, from own bed, stored dry, at tin 1 slot 1
  sow PRI-25 2026-01-12, 10 seeds, in loam
  give PRI-25 2026-01-13, 2 seeds, to a friend
  guide Primula, GA3 300 ppm, source "a list, 2019"`;

describe('every fact of the format', () => {
  const uses = (Object.keys(keywords) as Keyword[]).flatMap(keyword => [
    ...keywords[keyword].facts.filter(({ type }) => type !== 'text' && type !== 'path')
      .map(({ type, shape }): readonly [Keyword, string] => [keyword, keyword === 'limit' && type === 'duration' ? `${shape} ` : shape]),
    ...(longer[keyword] ?? []).map((shape): readonly [Keyword, string] => [keyword, shape]),
  ]);

  test.each(uses)('%s: %s is offered word by word and leaves no mistake', (keyword, shape) => {
    const isTime = keyword === 'limit' && shape.endsWith(' ');
    const head = `${keyword} ${subjects[keyword] ?? (keyword === 'limit' ? (isTime ? 'soak' : 'GA3') : 'VER-24/A 2026-01-19')}, `;
    const draw = keyword === 'dilute' && shape.startsWith('to ') ? 'from G1 5 mL, ' : '';
    const words = shape.trim().split(' ');
    for (let n = 0; n < words.length; n++) {
      const line = `${head}${draw}${words.slice(0, n).map(word => `${word} `).join('')}`;
      const source = spot(line, richer);
      const found = offered(source);
      // How well a substance dissolves nobody but the grower knows; a text and a moment are written as a whole.
      if (/solubility $|(at|from|in|to|stored|source|until|look) \S+ /.test(line.slice(head.length + draw.length))) continue;
      expect([line, found !== undefined]).toEqual([line, true]);
      for (const item of found!.items) {
        const written = taken(source, item, found!);
        const codes = parse(written).problems.map(({ code }) => code).filter(code => code !== 'missing-fact');
        expect([written, codes]).toEqual([written, []]);
      }
    }
  });
});
