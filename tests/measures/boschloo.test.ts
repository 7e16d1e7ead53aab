import { describe, expect, test } from 'vitest';
import { boschloo } from '../../server/src/measures/boschloo.ts';
import { fisher } from '../../server/src/measures/fisher.ts';

describe('Boschloo’s exact test', () => {
  // SciPy 1.10.1: boschloo_exact([[a, b], [n - a, m - b]], alternative='greater', n=256).pvalue
  test.each([
    [7, 8, 2, 8, 0.0106353759765625],
    [18, 20, 7, 20, 0.00013864534019406455],
    [5, 24, 1, 24, 0.05571273194436071],
    [22, 25, 15, 25, 0.016434083053350174],
    [10, 12, 4, 9, 0.050686419334570215],
    [3, 3, 0, 3, 0.015625],
    [35, 50, 22, 50, 0.004657875977665582],
  ])('finds %i of %i beside %i of %i as SciPy does', (a, n, b, m, p) => {
    expect(boschloo({ x: a, n }, { x: b, n: m })).toBeCloseTo(p, 6);
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
  });
});
