import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breslowDay } from '../../server/src/measures/breslow-day.ts';
import { mantelHaenszel } from '../../server/src/measures/mantel-haenszel.ts';
import { expectClose, known, strata, UCB_ADMISSIONS } from './helpers.ts';

const admissions = strata(UCB_ADMISSIONS);
const LOTS = strata([[8, 2, 2, 8], [5, 1, 2, 4]]);

describe('Mantel-Haenszel', () => {
  test('finds in UCBAdmissions what the documentation of mantelhaen.test shows', () => {
    const { oddsRatio, corrected, test: plain } = known(mantelHaenszel(admissions));
    const { value, low, high } = known(oddsRatio);
    expect(value).toBeCloseTo(0.9046968, 7);
    expect(low).toBeCloseTo(0.7719074, 7);
    expect(high).toBeCloseTo(1.0603298, 7);
    expect(corrected.chiSquare).toBeCloseTo(1.4269, 4);
    expect(corrected.p).toBeCloseTo(0.2323, 4);
    // R 4.2.2 and statsmodels 0.13.5, StratifiedTable.
    expectClose(corrected.chiSquare, 1.4269462285866883);
    expectClose(corrected.p, 0.23226346281704802);
    expect(plain.chiSquare).toBeGreaterThan(corrected.chiSquare);
  });

  test('is not fooled where the pooled table is: women are admitted less in all, not within departments', () => {
    const pooled = known(mantelHaenszel(strata([[1198, 1493, 557, 1278]])));
    expect(known(pooled.oddsRatio).low).toBeGreaterThan(1.5);
    expect(known(known(mantelHaenszel(admissions)).oddsRatio).high).toBeGreaterThan(1);
    expect(known(mantelHaenszel(admissions)).excess).toBeLessThan(0);
  });

  test('leaves out lots that cannot tell anything', () => {
    const silent = strata([[0, 5, 0, 9], [4, 0, 6, 0]]);
    expect(mantelHaenszel([...LOTS, ...silent])).toEqual(mantelHaenszel(LOTS));
    // 1 of 6 beside none of 9 tells something: 1 less 6 / 15.
    expect(known(mantelHaenszel(strata([[1, 5, 0, 9]]))).excess).toBeCloseTo(0.6, 12);
    expect(known(mantelHaenszel(strata([[6, 0, 8, 1]]))).excess).toBeCloseTo(6 - (6 * 14) / 15, 12);
    expect(mantelHaenszel(silent)).toEqual({ undefined: 'no lot has germinated and other seed, treated and untreated' });
  });

  test('has no odds ratio where it would be infinite or 0, but a test', () => {
    const endless = known(mantelHaenszel(strata([[9, 1, 0, 10]])));
    expect(endless.oddsRatio).toEqual({ undefined: 'it is infinite with these counts' });
    expect(endless.test.p).toBeLessThan(0.001);
    expect(known(mantelHaenszel(strata([[0, 10, 9, 1]]))).oddsRatio).toHaveProperty('undefined');
  });

  test('does not correct for continuity beyond the excess itself', () => {
    // The sides are alike: the excess is 0, and so are both chi-squares.
    const alike = known(mantelHaenszel(strata([[5, 5, 5, 5]])));
    expect(alike.corrected).toEqual({ chiSquare: 0, df: 1, p: 1 });
    expect(alike.test.chiSquare).toBe(0);
  });

  test('turns with the sides, and its interval holds the odds ratio', () => {
    const cell = fc.integer({ min: 1, max: 40 });
    fc.assert(fc.property(fc.array(fc.tuple(cell, cell, cell, cell), { minLength: 1, maxLength: 6 }), tables => {
      const found = known(mantelHaenszel(strata(tables)));
      const swapped = known(mantelHaenszel(strata(tables.map(([a, b, c, d]) => [c, d, a, b]))));
      const ratio = known(found.oddsRatio);
      expect(known(swapped.oddsRatio).value * ratio.value).toBeCloseTo(1, 9);
      expect(known(swapped.oddsRatio).low * ratio.high).toBeCloseTo(1, 9);
      expect(swapped.excess).toBeCloseTo(-found.excess, 9);
      expect(ratio.low).toBeLessThan(ratio.value);
      expect(ratio.high).toBeGreaterThan(ratio.value);
    }));
  });
});

describe('the Breslow-Day test', () => {
  test('finds the departments of UCBAdmissions unlike each other', () => {
    // statsmodels 0.13.5, StratifiedTable.test_equal_odds(adjust=True).
    const { chiSquare, df, p } = known(breslowDay(admissions, 0.9046968282586231));
    expect(chiSquare).toBeCloseTo(18.82550125205, 10);
    expect(df).toBe(5);
    expect(p).toBeCloseTo(0.0020714013979, 12);
  });

  test('finds two lots alike (statsmodels 0.13.5)', () => {
    const { chiSquare, p } = known(breslowDay(LOTS, known(known(mantelHaenszel(LOTS)).oddsRatio).value));
    expectClose(chiSquare, 0.06899950555074288);
    expectClose(p, 0.7927991067254917);
  });

  test('is 0 for lots with exactly one odds ratio, whatever their size', () => {
    expect(known(breslowDay(strata([[6, 3, 4, 8], [60, 30, 40, 80]]), 4)).chiSquare).toBeCloseTo(0, 9);
    expect(known(breslowDay(strata([[5, 5, 5, 5], [2, 6, 3, 9]]), 1)).chiSquare).toBeCloseTo(0, 9);
  });

  test('needs two lots', () => {
    expect(breslowDay(strata([[6, 3, 4, 8], [0, 4, 0, 4]]), 4)).toEqual({ undefined: 'only one lot can be compared' });
  });
});
