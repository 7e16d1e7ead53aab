import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newcombe } from '../../server/src/measures/difference.ts';

// Newcombe 1998, Stat Med 17:873-890, Table II, method 10, four decimals.
const TABLE_II: readonly (readonly number[])[] = [
  [56, 70, 48, 80, 0.0524, 0.3339],
  [9, 10, 3, 10, 0.1705, 0.8090],
  [6, 7, 2, 7, 0.0582, 0.8062],
  [5, 56, 0, 29, -0.0381, 0.1926],
  [0, 10, 0, 20, -0.1611, 0.2775],
  [0, 10, 0, 10, -0.2775, 0.2775],
  [10, 10, 0, 20, 0.6791, 1],
  [10, 10, 0, 10, 0.6075, 1],
];

// Wilson limits of R 4.2.2 (prop.test), squared and added there.
const R: readonly (readonly number[])[] = [
  [56, 70, 48, 80, 0.0524314724, 0.3338726540],
  [18, 20, 7, 20, 0.2540831339, 0.7335740853],
  [8, 10, 2, 10, 0.1618235651, 0.8026820451],
  [22, 25, 15, 25, 0.0354880561, 0.4879248077],
  [3, 15, 0, 15, -0.0415470932, 0.4518544872],
  [88, 100, 74, 100, 0.0310424381, 0.2462174088],
  [5, 5, 1, 5, 0.1925908605, 0.9637758914],
  [1, 8, 0, 8, -0.2152402669, 0.4708881822],
];

describe('the difference of two shares', () => {
  test.each(TABLE_II)('has the interval of Newcombe, Table II: %i/%i - %i/%i', (x1, n1, x2, n2, low, high) => {
    const { value, ...interval } = newcombe({ x: x1, n: n1 }, { x: x2, n: n2 });
    expect(value).toBeCloseTo(x1 / n1 - x2 / n2, 14);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });

  test.each(R)('agrees with limits from R to ten decimals: %i/%i - %i/%i', (x1, n1, x2, n2, low, high) => {
    const interval = newcombe({ x: x1, n: n1 }, { x: x2, n: n2 });
    expect(interval.low).toBeCloseTo(low, 10);
    expect(interval.high).toBeCloseTo(high, 10);
  });

  const share = fc.integer({ min: 1, max: 200 }).chain(n => (
    fc.record({ x: fc.integer({ min: 0, max: n }), n: fc.constant(n) })));

  test('lies in its interval, which stays between -1 and 1 and turns its sign when the sides are swapped', () => {
    fc.assert(fc.property(share, share, (first, second) => {
      const { value, low, high } = newcombe(first, second);
      const swapped = newcombe(second, first);
      expect(low).toBeGreaterThanOrEqual(-1);
      expect(high).toBeLessThanOrEqual(1);
      expect(low).toBeLessThanOrEqual(value);
      expect(high).toBeGreaterThanOrEqual(value);
      expect(swapped.low).toBeCloseTo(-high, 12);
      expect(swapped.high).toBeCloseTo(-low, 12);
    }));
  });

  test('is the same for seed that did not germinate, with the sign turned', () => {
    fc.assert(fc.property(share, share, (first, second) => {
      const { low, high } = newcombe(first, second);
      const rest = newcombe({ x: first.n - first.x, n: first.n }, { x: second.n - second.x, n: second.n });
      expect(rest.low).toBeCloseTo(-high, 12);
      expect(rest.high).toBeCloseTo(-low, 12);
    }));
  });
});
