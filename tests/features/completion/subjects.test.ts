import { describe, expect, test } from 'vitest';
import { labels, offered, taken } from './offered.ts';

const journal = `
  lot VER-24 Veratrum nigrum, 60 seeds
  split VER-24, A 24 seeds, B 24 seeds
  lot IRI-25 Iris sibirica, 20 seeds
  lot OLD-20 Iris ensata, 20 seeds
  discard OLD-20 2021-01-01, all soft
  soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
  lift VER-24/A 2026-01-11 19:00
  sow VER-24/A 2026-01-11 19:10, 24 seeds, 18 C
  count VER-24/A 2026-01-18, 3
  soak VER-24/B 2026-01-19 18:00, water, 24 h`;

const at = (line: string, marks: string, now?: string) => labels(offered(`${journal}\n  ${line}\n  ${marks}`, now));

describe('the subjects offered for a record', () => {
  test('are open batches with their plant and state, those to be counted first for a count', () => {
    expect(at('count ', '     ^ here')).toEqual([
      'VER-24/A · Veratrum nigrum · sown, day 8 · 3 of 24',
      'VER-24/B · Veratrum nigrum · in water',
      'IRI-25 · Iris sibirica · not sown',
      'VER-24 · Veratrum nigrum · not sown',
    ]);
  });

  test('are those in a soak first for a lift', () => {
    expect(at('lift ', '    ^ here')[0]).toBe('VER-24/B · Veratrum nigrum · in water');
  });

  test('are seed that was soaked and not sown first for a sowing', () => {
    expect(at('sow ', '   ^ here')[0]).toBe('VER-24/B · Veratrum nigrum · in water');
  });

  test('are seed that nothing was done to first for a soak', () => {
    expect(at('soak ', '    ^ here').slice(0, 2)).toEqual(['IRI-25 · Iris sibirica · not sown', 'VER-24 · Veratrum nigrum · not sown']);
  });

  test('move down once they were counted on the day of the record', () => {
    const found = labels(offered(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      sow VER-24/A 2026-01-11
      sow VER-24/B 2026-01-11
      day 2026-01-19
      count VER-24/A, 3
      count V
            ^ here
    `));
    expect(found.map(label => label.split(' ')[0])).toEqual(['VER-24/B', 'VER-24/A', 'VER-24']);
  });

  test('are found by the name of the plant', () => {
    expect(at('count iris', '         ^ here')).toEqual([
      'IRI-25 · Iris sibirica · not sown', 'OLD-20 · Iris ensata · closed 2021-01-01',
    ]);
  });

  test('are the batches of a lot behind the slash, and replace the whole path', () => {
    const source = `${journal}\n  count VER-24/X, 3\n  ${' '.repeat('count VER-24'.length)}^ here`;
    const found = offered(source)!;
    expect(labels(found).map(label => label.split(' ')[0])).toEqual(['VER-24/A', 'VER-24/B']);
    expect(taken(source, found.items[0]!, found)).toBe('count VER-24/A, 3');
  });

  test('are not closed batches until something is typed', () => {
    expect(at('count O', '      ^ here')).toEqual(['OLD-20 · Iris ensata · closed 2021-01-01']);
  });

  test('are stocks and regimes too where a record can be about any of them', () => {
    expect(labels(offered(`
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      regime cold, chill 4 C 90 days
      note 
          ^ here
    `))).toEqual(['VER-24 · Veratrum nigrum · not sown', 'G1 · GA3 1000 ppm', 'cold · 1 stage']);
  });

  test('are what can be limited for a limit', () => {
    expect(labels(offered('\n  limit s\n        ^ here'))).toEqual([
      'soak · the longest soak', 'stock · how long a stock keeps', 'smoke · smoke water',
    ]);
  });

  test('are none where a new thing gets its id', () => {
    for (const keyword of ['lot', 'stock', 'dilute', 'regime', 'agent']) {
      expect(offered(`\n  ${keyword} X\n  ${' '.repeat(keyword.length + 1)}^ here`)).toBeUndefined();
    }
  });
});
