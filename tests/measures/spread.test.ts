import { describe, expect, test } from 'vitest';
import { ofDishes, seedsForOne, spreadOf, type Dish } from '../../server/src/measures/spread.ts';
import { CROWDER, expectClose } from './helpers.ts';

const dish = (x: number, n: number): Dish => [{ seeds: x, score: 1 }, { seeds: n - x, score: 0 }];

describe('the spread of dishes', () => {
  test('is the heterogeneity of their shares over its degrees of freedom', () => {
    // Crowder 1978: chi-square of the plates of O. aegyptiaca 75 on bean, R 4.2.2: 9.7595 with 4 df.
    const { factor, df } = spreadOf([CROWDER['O. aegyptiaca 75, bean'].map(([x, n]) => dish(x, n))]);
    expect(df).toBe(4);
    expect(factor * df).toBeCloseTo(9.7595, 3);
  });

  test('sees dishes that are early or late, though as much came up in all', () => {
    const early: Dish = [{ seeds: 10, score: 30 }, { seeds: 0, score: 20 }, { seeds: 5, score: 0 }];
    const late: Dish = [{ seeds: 0, score: 30 }, { seeds: 10, score: 20 }, { seeds: 5, score: 0 }];
    expect(spreadOf([[early, early]]).factor).toBe(1);
    expect(spreadOf([[early, late]]).factor).toBeGreaterThan(1);
  });

  test('is unknown with one dish a side, which leaves a p-value as it is', () => {
    const one = spreadOf([[dish(5, 10)], [dish(2, 10)]]);
    expect(one).toMatchObject({ factor: 1, df: 0 });
    expect(ofDishes(0.02, one, 'share')).toBe(0.02);
    expect(seedsForOne(one)).toBe(1);
    // One that shows nothing, or all, stays as it is whatever the dishes.
    for (const p of [0, 0.5, 0.7, 1]) expect(ofDishes(p, { factor: 2, df: 4, size: 12 }, 'share')).toBe(p);
  });

  test('is none of no dishes', () => {
    expect(spreadOf([])).toEqual({ factor: 1, df: 0, size: 0 });
  });

  test('makes a p-value of days that of Student’s t', () => {
    // SciPy 1.10.1: t.sf(norm.isf(0.025), 6) and t.sf(norm.isf(0.01) / sqrt(1.7), 2).
    expectClose(ofDishes(0.025, { factor: 1, df: 6, size: 12 }, 'days'), 0.048850015215809374);
    expectClose(ofDishes(0.01, { factor: 1.7, df: 2, size: 24 }, 'days'), 0.10815887044823677);
  });

  test('makes a p-value of shares that of the greatest spread that is allowed for', () => {
    // SciPy 1.10.1, numerical integration of chi2.pdf(x, df) norm.sf(T sqrt(max(1, v x / df) / v)), v = 1 + (size - 1)
    // 0.1.
    expect(ofDishes(0.025, { factor: 1, df: 6, size: 12 }, 'share')).toBeCloseTo(0.04009577337118563, 5);
    expect(ofDishes(0.01, { factor: 1.7, df: 2, size: 24 }, 'share')).toBeCloseTo(0.08067917618324053, 5);
    expect(ofDishes(0.001, { factor: 2.2, df: 1, size: 10 }, 'share')).toBeCloseTo(0.04195764136269907, 5);
    expect(seedsForOne({ factor: 1, df: 6, size: 12 })).toBeCloseTo(1.3048601119339993, 4);
    expect(seedsForOne({ factor: 1, df: 1, size: 10 })).toBeCloseTo(1.5130746490363371, 4);
  });
});
