import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fisher, reaches } from '../../server/src/measures/fisher.ts';
import { power, powerOf } from '../../server/src/measures/power.ts';
import { rejectionRegion } from '../../server/src/measures/rejection.ts';

// R 4.2.2: the sum of dbinom over all tables with fisher.test p <= 0.05. SciPy 1.10.1 agrees on six of them.
const R: readonly (readonly number[])[] = [
  [10, 10, 0.50, 0.95, 0.431398417957],
  [10, 10, 0.20, 0.80, 0.635322818648],
  [12, 12, 0.40, 0.90, 0.638639456977],
  [20, 20, 0.35, 0.90, 0.953195550494],
  [20, 20, 0.50, 0.80, 0.409456898033],
  [10, 20, 0.50, 0.95, 0.796817536846],
  [8, 8, 0.10, 0.90, 0.931593826124],
  [5, 5, 0.05, 0.95, 0.913861644119],
  [30, 30, 0.30, 0.60, 0.560813579590],
  [10, 10, 0.50, 0.50, 0.012779235840],
];

describe("the power of Fisher's test", () => {
  test.each(R)('agrees with R: %i and %i seeds, %f against %f', (n1, n2, p1, p2, wanted) => {
    expect(power(n1, n2, p1, p2)).toBeCloseTo(wanted, 11);
  });

  test('never exceeds the level where there is no difference', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }),
      fc.double({ min: 0, max: 1, noNaN: true }), (n1, n2, p) => {
        expect(power(n1, n2, p, p)).toBeLessThanOrEqual(0.05 + 1e-9);
      }));
  });

  test('is the same with the sides exchanged and for seed that does not germinate', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }), share, share,
      (n1, n2, p1, p2) => {
        const found = power(n1, n2, p1, p2);
        expect(power(n2, n1, p2, p1)).toBeCloseTo(found, 10);
        expect(power(n1, n2, 1 - p1, 1 - p2)).toBeCloseTo(found, 10);
      }));
  });

  test('of 100 seeds a side is found for many shares from one rejection region', () => {
    const region = rejectionRegion(100, 100);
    expect(powerOf(region, 0.4, 0.6)).toBeCloseTo(power(100, 100, 0.4, 0.6), 14);
    expect(powerOf(region, 0, 1)).toBeCloseTo(1, 12);
  });
});

describe('the rejection region', () => {
  test.each([[3, 3], [5, 7], [12, 12], [20, 13], [1, 40], [30, 31]])(
    "is where Fisher's test reaches 0.05, for %i and %i seeds", (n1, n2) => {
      const { from, to } = rejectionRegion(n1, n2);
      for (let a = 0; a <= n1; a++) {
        for (let b = 0; b <= n2; b++) {
          const rejected = a < from[a + b]! || a > to[a + b]!;
          expect(rejected, `${a} and ${b}`).toBe(reaches(fisher({ x: a, n: n1 }, { x: b, n: n2 }).twoSided));
        }
      }
    });
});
