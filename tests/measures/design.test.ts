import { describe, expect, test } from 'vitest';
import { bestDishes, bestSplit, designOf, limitOf, ONE_DISH, visibleShare,
  type Layout } from '../../server/src/measures/design.ts';
import { power } from '../../server/src/measures/power.ts';
import { valueOf } from './helpers.ts';

const of = (treated: number, untreated: number, layout: Partial<Layout> = {}) => designOf(treated, untreated, {
  ...ONE_DISH, ...layout });

describe('the smallest visible share', () => {
  test('is where the power reaches 0.8', () => {
    for (const [treated, untreated, share] of [[12, 12, 0.2], [20, 10, 0.4], [100, 100, 0.5], [6, 6, 0]] as const) {
      const design = of(treated, untreated);
      const found = valueOf(visibleShare(design, share));
      expect(power(design, found, share)).toBeGreaterThanOrEqual(0.8);
      expect(power(design, found - 2e-4, share)).toBeLessThan(0.8);
    }
  });

  test('does not exist where even all seeds germinating could be chance', () => {
    expect(visibleShare(of(3, 3), 0)).toHaveProperty('undefined');
    expect(visibleShare(of(12, 12), 0.9)).toHaveProperty('undefined');
  });

  test('of more seeds than are reckoned with is that of as many as are', () => {
    expect(designOf(4000, 300, ONE_DISH)).toEqual(designOf(250, 250, ONE_DISH));
    // Any gain of 15 points is found: where it is hardest.
    expect(power(designOf(250, 250, ONE_DISH), 0.575, 0.425)).toBeGreaterThan(0.89);
  });
});

describe('the best split', () => {
  test('gives out all the seeds and sees at least as small a difference as any split around the half', () => {
    for (const [seeds, share] of [[24, 0.4], [24, 0.2], [25, 0.3], [60, 0.5]] as const) {
      const best = bestSplit(seeds, share, ONE_DISH);
      expect(best.treated + best.untreated).toBe(seeds);
      for (let treated = Math.ceil(seeds / 2) - 2; treated <= Math.ceil(seeds / 2) + 2; treated++) {
        const other = visibleShare(of(treated, seeds - treated), share);
        expect(limitOf(best.visible)).toBeLessThanOrEqual(limitOf(other));
      }
    }
  });

  test('of 24 seeds sees far more than 20 treated against 4 untreated', () => {
    expect(limitOf(visibleShare(of(20, 4), 0.2))).toBeGreaterThan(0.85);
    expect(valueOf(bestSplit(24, 0.2, ONE_DISH).visible)).toBeLessThan(0.78);
  });

  test('leaves more seed untreated where several treatments are held against it', () => {
    const { treated, untreated, visible } = bestSplit(96, 0.2, { ...ONE_DISH, treatments: 3 });
    expect(3 * treated + untreated).toBe(96);
    expect(untreated).toBeGreaterThan(treated);
    expect(limitOf(visible)).toBeLessThan(limitOf(visibleShare(of(24, 24, { treatments: 3 }), 0.2)));
  });

  test('of very few seeds says that nothing can be seen', () => {
    expect(bestSplit(4, 0.2, ONE_DISH).visible).toHaveProperty('undefined');
    expect(bestSplit(2, 0.2, ONE_DISH)).toMatchObject({ treated: 1, untreated: 1 });
  });
});

describe('the best dishes', () => {
  test('of 48 seeds a side are four of 12, which find more than two of 24 where dishes differ', () => {
    const best = bestDishes(48, 48, 0.4, 1)!;
    expect(best.dishes).toBe(4);
    const two = visibleShare(of(48, 48, { dishes: { treated: 2, untreated: 2 } }), 0.4);
    expect(limitOf(best.visible)).toBeLessThan(limitOf(two) - 0.05);
  });

  test('are not offered where the seeds do not fill them', () => {
    expect(bestDishes(11, 30, 0.4, 1)).toBeUndefined();
    expect(bestDishes(12, 12, 0.1, 1)!.dishes).toBe(2);
  });
});
