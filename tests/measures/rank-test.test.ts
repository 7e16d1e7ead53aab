import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalTail, rankTest, type Category } from '../../server/src/measures/rank-test.ts';

const of = (first: readonly number[], second: readonly number[]): Category[] => (
  first.map((n, i) => ({ first: n, second: second[i]! })));

/** All ways to choose which seeds are of the first side, one by one. */
function enumerated(categories: readonly Category[], scores: readonly number[]): number {
  const seeds = categories.flatMap(({ first, second }, i) => Array<number>(first + second).fill(scores[i]!));
  const n = categories.reduce((sum, { first }) => sum + first, 0);
  const seen = categories.reduce((sum, { first }, i) => sum + first * scores[i]!, 0);
  let [all, tail] = [0, 0];
  const choose = (from: number, left: number, sum: number): void => {
    if (left === 0) {
      all++;
      if (sum >= seen) tail++;
      return;
    }
    for (let i = from; i <= seeds.length - left; i++) choose(i + 1, left - 1, sum + seeds[i]!);
  };
  choose(0, n, 0);
  return tail / all;
}

describe('the rank-sum test', () => {
  test('counts the divisions of the seed in which the first side would be as far ahead', () => {
    expect(rankTest(of([3, 0], [0, 3])).p).toBeCloseTo(1 / 20, 12);
    // 8 seeds, 4 a side, all of one side first: 1 of 70.
    expect(rankTest(of([4, 0, 0], [0, 2, 2])).p).toBeCloseTo(1 / 70, 12);
  });

  test('has the mean and the variance of the sum over all divisions', () => {
    // 2 of 4 seeds, scores 30, 30, 0 and 0: the sums are 60 once, 30 four times and 0 once.
    expect(rankTest(of([2, 0], [0, 2]))).toMatchObject({ excess: 30, variance: 300 });
    // SciPy 1.10.1: norm.sf((30 + 10 - 0.5) / sqrt(300 + 100)).
    const p = normalTail([{ excess: 30, variance: 300 }, { excess: 10, variance: 100 }]);
    expect(p).toBeCloseTo(0.02413407400472475, 12);
  });

  test('is exact up to some 400,000 terms', () => {
    // 23 seeds that are 30 steps from the rest: 23 * 24 * 691 = 381,432 terms; of 24 there are 432,600.
    expect([23, 24].map(seeds => rankTest(of([seeds, 0], [0, 40])).exact)).toEqual([true, false]);
  });

  test('agrees with going through every division one by one', () => {
    const counts = fc.array(fc.tuple(fc.nat({ max: 3 }), fc.nat({ max: 3 })), { minLength: 2, maxLength: 4 });
    fc.assert(fc.property(counts, rows => {
      const categories = rows.map(([first, second]) => ({ first, second }));
      const found = rankTest(categories);
      if (found.exact) expect(found.p).toBeCloseTo(enumerated(categories, found.scores), 10);
      else expect(found.p).toBeGreaterThan(0.1);
    }));
  });

  test('comes close to the normal curve with many seeds', () => {
    const found = rankTest(of([7, 5, 2, 1, 1], [1, 2, 3, 4, 6]));
    expect(found.exact).toBe(true);
    expect(normalTail([found])).toBeCloseTo(found.p, 2);
  });

  test('grows where a seed of the first side changes its day with a later one of the second', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 3, maxLength: 5 });
    fc.assert(fc.property(counts, fc.nat({ max: 3 }), (second, at) => {
      const i = Math.min(at, second.length - 2);
      const before = second.map(n => ({ first: 2, second: n }));
      // As many seeds are found at each age, so that ranks stay: a seed alone that comes later changes the ties, too.
      const after = before.map(({ first, second: n }, j) => {
        const more = j === i ? -1 : j === i + 1 ? 1 : 0;
        return { first: first + more, second: n - more };
      });
      const [early, late] = [rankTest(before), rankTest(after)];
      expect(late.scores).toEqual(early.scores);
      expect(normalTail([late])).toBeGreaterThan(normalTail([early]));
      if (early.exact && late.exact) expect(late.p).toBeGreaterThan(early.p);
    }));
  });
});
