import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fisher, reaches } from '../../server/src/measures/fisher.ts';
import { expectClose } from './helpers.ts';

// R 4.2.2, fisher.test: two-sided, and one-sided with the first share higher. SciPy 1.10.1 agrees on the
// two-sided ones.
const R: readonly (readonly number[])[] = [
  [3, 4, 1, 4, 34 / 70, 17 / 70],
  [4, 4, 0, 4, 2 / 70, 1 / 70],
  [10, 13, 2, 17, 0.000536724119143, 0.000465180943363],
  [18, 20, 7, 20, 0.000771628135366, 0.000385814067683],
  [8, 10, 2, 10, 0.0230141375652, 0.0115070687826],
  [22, 25, 15, 25, 0.0506710401905, 0.0253355200952],
  [3, 15, 0, 15, 0.224137931034, 0.112068965517],
  [88, 100, 74, 100, 0.0183206540305, 0.00916032701523],
  [5, 5, 1, 5, 0.047619047619, 0.0238095238095],
  [1, 8, 0, 8, 1, 0.5],
  [10, 10, 0, 10, 0.0000108250882245, 0.00000541254411223],
];

describe("Fisher's exact test", () => {
  test.each(R)('agrees with R to ten digits: %i/%i against %i/%i', (x1, n1, x2, n2, twoSided, greater) => {
    const found = fisher({ x: x1, n: n1 }, { x: x2, n: n2 });
    expectClose(found.twoSided, twoSided);
    expectClose(found.greater, greater);
  });

  test('takes dust seed by the million, and no room for counts that cannot happen', () => {
    // R 4.2.2: fisher.test(matrix(c(251500, 748500, 250000, 750000), 2, byrow = TRUE)).
    expectClose(fisher({ x: 251_500, n: 1_000_000 }, { x: 250_000, n: 1_000_000 }).twoSided, 0.0144684587041);
    const most = 1_000_000_000;
    expect(fisher({ x: most / 2, n: most }, { x: most / 2, n: most }).twoSided).toBe(1);
    expect(fisher({ x: most, n: most }, { x: 0, n: most })).toMatchObject({ twoSided: 0, greater: 0 });
    expect(fisher({ x: 0, n: most }, { x: most, n: most })).toMatchObject({ twoSided: 0, less: 0 });
  });

  test('is the lady tasting tea: 17 of 70 one-sided (Fisher 1935)', () => {
    expectClose(fisher({ x: 3, n: 4 }, { x: 1, n: 4 }).greater, 17 / 70);
  });

  test('counts the equally likely table at the other end in spite of rounding', () => {
    // Equal samples: the two ends are exact ties, so two-sided is twice one-sided.
    for (let n = 2; n <= 60; n++) {
      for (let x = Math.ceil((n + 1) / 2); x <= n; x++) {
        const found = fisher({ x, n }, { x: n - x, n });
        expectClose(found.twoSided, Math.min(1, 2 * found.greater));
      }
    }
  });

  test('reaches 0.05 one-sided with 3 of 3 against 0 of 3, which is exactly 1 in 20', () => {
    const { greater } = fisher({ x: 3, n: 3 }, { x: 0, n: 3 });
    expect(greater).toBeCloseTo(0.05, 12);
    expect(reaches(greater)).toBe(true);
    expect(reaches(0.05000000000000001)).toBe(true);
    expect(reaches(0.0500001)).toBe(false);
  });

  // R 4.2.2: the smallest count with two-sided p <= 0.05 against none, in samples of one size.
  test.each([[4, 4], [5, 4], [6, 5], [8, 5], [10, 5], [12, 5], [15, 5], [20, 5], [25, 6], [30, 6], [50, 6], [100, 6]])(
    'with %i seeds a side against none needs %i germinated to be significant', (n, x) => {
      expect(reaches(fisher({ x, n }, { x: 0, n }).twoSided)).toBe(true);
      expect(reaches(fisher({ x: x - 1, n }, { x: 0, n }).twoSided)).toBe(false);
    });

  test('can never be significant with 3 seeds a side', () => {
    expect(reaches(fisher({ x: 3, n: 3 }, { x: 0, n: 3 }).twoSided)).toBe(false);
  });

  const share = fc.integer({ min: 0, max: 120 }).chain(n => (
    fc.record({ x: fc.integer({ min: 0, max: n }), n: fc.constant(n) })));

  test('is the same with the sides, or germinated and not, exchanged', () => {
    fc.assert(fc.property(share, share, (first, second) => {
      const found = fisher(first, second);
      const swapped = fisher(second, first);
      const rest = fisher({ x: first.n - first.x, n: first.n }, { x: second.n - second.x, n: second.n });
      expect(swapped.twoSided).toBeCloseTo(found.twoSided, 12);
      expect(swapped.less).toBeCloseTo(found.greater, 12);
      expect(rest.twoSided).toBeCloseTo(found.twoSided, 12);
      expect(rest.less).toBeCloseTo(found.greater, 12);
    }));
  });

  test('gives probabilities, of which the one-sided ones share the table seen', () => {
    fc.assert(fc.property(share, share, (first, second) => {
      const { twoSided, greater, less } = fisher(first, second);
      for (const p of [twoSided, greater, less]) {
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
      }
      expect(greater + less).toBeGreaterThanOrEqual(1 - 1e-12);
    }));
  });
});
