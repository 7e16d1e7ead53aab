import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

describe('something taken from a stock before it was made', () => {
  test('is marked where the stock is named', () => {
    expectMarked(['draw-before-made'], `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 18 mL
      dilute G2 2026-01-08, from G1 1 mL, to 20 mL
                                 ^^ draw-before-made
      soak VER-24 2026-01-08 19:00, KNO3 0.2 %, G1 1 mL, 24 h
                                                ^^ draw-before-made
      apply VER-24 2026-01-07, G2, 2 drops, 3 seedlings
                               ^^ draw-before-made
      dilute G3 2026-01-09, from G1 1 mL, to 20 mL
    `);
  });

  test('is marked on one day only where both times are written', () => {
    expectMarked(['draw-before-made'], `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09 18:00, GA3 20 mg, 18 mL
      soak VER-24 2026-01-09, G1 1 mL, 24 h
      soak VER-24 2026-01-09 17:00, G1 1 mL, 24 h
                                    ^^ draw-before-made
      soak VER-24 2026-01-09 18:00, G1 1 mL, 24 h
    `);
  });

  test('follows the day line that dates the stock', () => {
    expectMarked(['draw-before-made'], `
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, G1 1 mL, 24 h
                                    ^^ draw-before-made
      --- b.germ
      day 2026-01-11
      stock G1, GA3 20 mg, 18 mL
    `);
  });
});

describe('a stock used after its last good day', () => {
  test('is marked by its own keeps, by the limit, and without both after four years', () => {
    expectMarked(['stock-expired'], `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2020-01-09, GA3 20 mg, 18 mL
      soak VER-24 2024-01-09 19:00, G1 1 mL, 24 h
      soak VER-24 2024-01-10 19:00, G1 1 mL, 24 h
                                    ^^ stock-expired
      stock G2 2026-01-09, GA3 20 mg, 18 mL, keeps 2 weeks
      dilute G3 2026-01-23, from G2 1 mL, to 20 mL, keeps 1 year
      dilute G4 2026-01-24, from G2 1 mL, to 20 mL, keeps 1 year
                                 ^^ stock-expired
    `);
    expectMarked(['stock-expired'], `
      --- limits.germ
      limit stock, 1 year
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2025-01-09, GA3 20 mg, 18 mL
      apply VER-24 2026-01-10, G1, 2 drops, 3 seedlings
                               ^^ stock-expired
      stock G2 2025-01-09, GA3 20 mg, 18 mL, keeps 2 years
      apply VER-24 2026-01-10, G2, 2 drops, 3 seedlings
    `);
  });

  test('makes what is diluted from it no younger, unless that says so itself', () => {
    expectMarked(['stock-expired'], `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2022-01-09, GA3 20 mg, 18 mL
      dilute G2 2026-01-02, from G1 1 mL, to 20 mL
      dilute G3 2026-01-02, from G2 1 mL, to 20 mL
      dilute G4 2026-01-02, from G1 1 mL, to 20 mL, keeps 1 month
      soak VER-24 2026-01-10 19:00, G3 1 mL, 24 h
                                    ^^ stock-expired
      soak VER-24 2026-01-12 19:00, G4 1 mL, 24 h
    `);
  });

  test('is told with the day, with what sets it, and with the days since', () => {
    const journal = `
      stock G1 2026-01-09, GA3 20 mg, 18 mL, keeps 2 weeks
      dilute G2 2026-01-24, from G1 1 mL, to 20 mL
    `;
    expect(problemsIn('stock-expired', journal)[0]?.message)
      .toContain('G1 was good until 2026-01-23 (its record says “keeps 2 weeks”); this takes from it 1 day later.');
  });
});

describe('a stock that is good for a short time only', () => {
  const journal = `
    stock G1 2022-01-09, GA3 20 mg, 18 mL
          ^^ stock-near-expiry
    stock G2 2022-06-09, GA3 20 mg, 18 mL
    stock G3 2021-12-01, GA3 20 mg, 18 mL
    stock G4 2022-01-09, GA3 20 mg, 18 mL
    dilute G5 2025-01-09, from G4 18 mL, to 20 mL, keeps 11 months
    stock G6 2025-12-20, GA3 20 mg, 18 mL, keeps 2 weeks
  `;

  test('is hinted at as long as something is left of it', () => {
    expectMarked(['stock-near-expiry'], journal, { now: '2025-12-20' });
  });

  test('is one in the last tenth of a short time', () => {
    expect(problemsIn('stock-near-expiry', journal, { now: '2026-01-01' })).toHaveLength(1);
    expect(problemsIn('stock-near-expiry', journal, { now: '2026-01-02' })).toHaveLength(2);
    expect(problemsIn('stock-near-expiry', journal, { now: '2026-01-04' })).toHaveLength(1);
  });

  test('is told with the days that are left', () => {
    expect(problemsIn('stock-near-expiry', journal, { now: '2026-01-09' })[0]?.message)
      .toContain('G1 is good until 2026-01-09, 0 days from now (keeps 4 years; default: common practice, no source).');
  });
});
