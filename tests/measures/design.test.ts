import { describe, expect, test } from 'vitest';
import { bestSplit, MOST_SEEDS_A_SIDE, reckonedPower, seedsASide, visibleShare } from '../../server/src/measures/design.ts';
import { power } from '../../server/src/measures/power.ts';
import { valueOf } from './helpers.ts';

describe('the number of seeds a side', () => {
  // R 4.2.2, exact power of fisher.test; no number up to 60 has less again.
  test.each([[0.5, 0.95, 17], [0.3, 0.7, 29], [0.2, 0.8, 12], [0.5, 0.9, 23], [0.1, 0.5, 23]])(
    'that tells %f from %f with power 0.8 is %i', (p1, p2, n) => {
      expect(seedsASide(p1, p2)).toEqual({ value: n });
      expect(seedsASide(p2, p1)).toEqual({ value: n });
    });

  test('is the smallest one: no smaller number has the power', () => {
    for (const wanted of [0.5, 0.8, 0.9]) {
      for (let a = 0; a < 10; a++) {
        for (let b = a + 1; b <= 10; b++) {
          const found = seedsASide(a / 10, b / 10, wanted);
          if (!('value' in found) || found.value > 25) continue;
          expect(power(found.value, found.value, a / 10, b / 10)).toBeGreaterThanOrEqual(wanted);
          for (let n = 1; n < found.value; n++) expect(power(n, n, a / 10, b / 10)).toBeLessThan(wanted);
        }
      }
    }
  });

  test('is not given beyond what a grower sows, nor for no difference', () => {
    expect(seedsASide(0.5, 0.51)).toEqual({ undefined: `more than ${MOST_SEEDS_A_SIDE} seeds a side would be needed` });
    expect(seedsASide(0.5, 0.5)).toEqual({ undefined: 'there is no difference to see' });
  });
});

describe('the power as far as it is reckoned', () => {
  test('is exact up to 250 seeds a side', () => {
    expect(reckonedPower(20, 20, 0.35, 0.9)).toBe(power(20, 20, 0.35, 0.9));
    expect(reckonedPower(250, 4000, 0.5, 0.6)).toBe(power(250, 4000, 0.5, 0.6));
    expect(reckonedPower(4000, 12, 0.5, 0.8)).toBe(power(4000, 12, 0.5, 0.8));
  });

  test('of more is a little less than theirs, and more than enough for a difference of 30 points', () => {
    expect(reckonedPower(400, 300, 0.55, 0.4)).toBeLessThan(power(400, 300, 0.55, 0.4));
    for (const share of [0, 0.1, 0.35, 0.5, 0.7]) {
      expect(reckonedPower(1_000_000_000, 10_000, share + 0.3, share)).toBeGreaterThan(0.9999);
    }
    expect(reckonedPower(1_000_000_000, 12, 0.9, 0.3)).toBe(power(4750, 12, 0.9, 0.3));
  });
});

describe('the smallest visible share', () => {
  test('is where the power reaches 0.8', () => {
    for (const [treated, untreated, share] of [[12, 12, 0.2], [20, 10, 0.4], [100, 100, 0.5], [6, 6, 0]] as const) {
      const found = valueOf(visibleShare(treated, untreated, share));
      expect(power(treated, untreated, found, share)).toBeGreaterThanOrEqual(0.8);
      expect(power(treated, untreated, found - 1e-6, share)).toBeLessThan(0.8);
    }
  });

  test('is about 80 % against 20 % with 12 seeds a side, as the exact power 0.8115 of that pair has it (R 4.2.2)', () => {
    const found = valueOf(visibleShare(12, 12, 0.2));
    expect(found).toBeGreaterThan(0.79);
    expect(found).toBeLessThan(0.8);
  });

  test('does not exist where even all seeds germinating could be chance', () => {
    expect(visibleShare(3, 3, 0)).toEqual({
      undefined: 'even if every treated seed germinated, chance could explain the difference',
    });
    expect(visibleShare(12, 12, 0.9)).toHaveProperty('undefined');
  });
});

describe('the best split', () => {
  test('gives out all the seeds and sees at least as small a difference as any split around the half', () => {
    for (const [seeds, share] of [[24, 0.4], [24, 0.2], [25, 0.3], [60, 0.5]] as const) {
      const best = bestSplit(seeds, share);
      expect(best.treated + best.untreated).toBe(seeds);
      for (let treated = Math.ceil(seeds / 2) - 5; treated <= Math.ceil(seeds / 2) + 5; treated++) {
        const other = visibleShare(treated, seeds - treated, share);
        if ('value' in other) expect(valueOf(best.visible)).toBeLessThanOrEqual(other.value);
      }
    }
  });

  test('of 24 seeds sees far more than 20 treated against 4 untreated', () => {
    expect(valueOf(visibleShare(20, 4, 0.2))).toBeGreaterThan(0.9);
    expect(valueOf(bestSplit(24, 0.2).visible)).toBeLessThan(0.8);
  });

  test('of very few seeds says that nothing can be seen', () => {
    expect(bestSplit(4, 0.2).visible).toHaveProperty('undefined');
    expect(bestSplit(2, 0.2)).toMatchObject({ treated: 1, untreated: 1 });
  });
});
