import { describe, expect, test } from 'vitest';
import { boschloo } from '../../server/src/measures/boschloo.ts';
import { fisher } from '../../server/src/measures/fisher.ts';

describe('Boschloo’s exact test', () => {
  // SciPy 1.10.1: boschloo_exact([[a, b], [n - a, m - b]], alternative='greater', n=256).pvalue, and to more digits
  // the greatest of sums of binom.pmf over what hypergeom.sf finds as unlikely, by minimize_scalar.
  test.each([
    [7, 8, 2, 8, 0.010635375976562519],
    [18, 20, 7, 20, 0.00013864534019406477],
    [5, 24, 1, 24, 0.05571273194436099],
    [22, 25, 15, 25, 0.016434083053350278],
    [10, 12, 4, 9, 0.050686419334570465],
    [3, 3, 0, 3, 0.015625],
    [35, 50, 22, 50, 0.004657875977665845],
    [20, 20, 2, 3, 0.056215063095665325],
    [14, 40, 0, 5, 0.07206449550507328],
    [36, 40, 3, 5, 0.06247956657977696],
    [4, 60, 0, 60, 0.04148274666629183],
    // The chance is greatest at a share of 1 / 201.
    [1, 1, 0, 200, 0.001834812082150762],
  ])('finds %i of %i beside %i of %i as SciPy does', (a, n, b, m, p) => {
    expect(boschloo({ x: a, n }, { x: b, n: m })).toBeCloseTo(p, 12);
  });

  test('never gives more than Fisher’s test, nor finds what it does not at its level', () => {
    for (let n = 2; n <= 14; n += 3) {
      for (let x = 0; x <= n; x++) {
        for (let y = 0; y <= 9; y++) {
          const p = boschloo({ x, n }, { x: y, n: 9 });
          expect(p).toBeLessThanOrEqual(fisher({ x, n }, { x: y, n: 9 }).greater * (1 + 1e-7));
          expect(p).toBeGreaterThan(0);
        }
      }
    }
  });

  test('gives Fisher’s p where it is far from any verdict, and of very many seeds', () => {
    expect(boschloo({ x: 3, n: 8 }, { x: 3, n: 8 })).toBe(fisher({ x: 3, n: 8 }, { x: 3, n: 8 }).greater);
    const many = [{ x: 300, n: 400 }, { x: 250, n: 400 }] as const;
    expect(boschloo(...many)).toBeCloseTo(fisher(...many).greater, 12);
    // Of 600 and 600 seeds with 600 germinated, all on one side are so unlikely that no number is left of it.
    const ps = Array.from({ length: 601 }, (_, x) => boschloo({ x, n: 600 }, { x: 600 - x, n: 600 }));
    expect(ps.filter((p, x) => !(p <= (ps[x - 1] ?? 1)))).toEqual([]);
    expect([ps[0], ps[600]]).toEqual([1, 0]);
  });
});
