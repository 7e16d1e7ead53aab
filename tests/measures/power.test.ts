import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boschloo } from '../../server/src/measures/boschloo.ts';
import { boschlooTable } from '../../server/src/measures/boschloo-table.ts';
import { betaBinomialProbabilities, sumProbabilities } from '../../server/src/measures/discrete.ts';
import { findingsOf, type Design } from '../../server/src/measures/finding.ts';
import { power } from '../../server/src/measures/power.ts';

const seeds = fc.integer({ min: 1, max: 20 });
const share = fc.double({ min: 0, max: 1, noNaN: true });

function design(treated: number, untreated = treated, more: Partial<Design> = {}): Design {
  return { treated, untreated, dishes: { treated: 1, untreated: 1 }, treatments: 1, rho: 0, ...more };
}

describe("Boschloo's test of all outcomes at once", () => {
  test.each([[8, 8], [12, 9], [3, 15], [20, 20]])('is that of each outcome, for %i and %i seeds', (n, m) => {
    const { p } = boschlooTable(n, m);
    for (let a = 0; a <= n; a++) {
      for (let b = 0; b <= m; b++) {
        const one = boschloo({ x: a, n }, { x: b, n: m });
        expect(p[a * (m + 1) + b]! / one, `${a} and ${b}`).toBeCloseTo(1, 2);
      }
    }
  });
});

describe('counts of dishes that differ', () => {
  test('have the mean of single seeds and the variance that the correlation gives them', () => {
    // n p q (1 + (n - 1) rho): the definition of the intraclass correlation.
    fc.assert(fc.property(seeds, fc.double({ min: 0.05, max: 0.95, noNaN: true }), fc.double({ min: 0, max: 0.5,
      noNaN: true }), (n, p, rho) => {
      const all = betaBinomialProbabilities(n, p, rho);
      const moment = (k: number) => all.reduce((sum, chance, x) => sum + chance * x ** k, 0);
      expect(moment(0)).toBeCloseTo(1, 10);
      expect(moment(1)).toBeCloseTo(n * p, 8);
      // A correlation below 1e-9 is taken for none.
      const variance = n * p * (1 - p) * (1 + (n - 1) * rho);
      expect(Math.abs(moment(2) - moment(1) ** 2 - variance)).toBeLessThan(1e-8 + n * n * 1e-9);
    }));
  });

  test('of several dishes add up', () => {
    const two = sumProbabilities(betaBinomialProbabilities(3, 0.4, 0), betaBinomialProbabilities(5, 0.4, 0));
    for (const [x, chance] of betaBinomialProbabilities(8, 0.4, 0).entries()) expect(two[x]).toBeCloseTo(chance, 12);
  });
});

// SciPy recomputes the power of six designs with one dish a side (outside/outside.py); the simulated verdicts of
// tests/simulate hold the verdict itself to these chances.
describe('the power of the verdict', () => {
  test('is a chance, and 0 with fewer seeds than a verdict needs', () => {
    fc.assert(fc.property(seeds, seeds, share, share, (n, m, p, q) => {
      const found = power(design(n, m), p, q);
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found).toBeLessThanOrEqual(1);
      if (Math.min(n, m) < 4) expect(found).toBe(0);
    }));
  });

  // SciPy 1.10.1, as outside/outside.py has it.
  test.each([
    [5, 4, 1, 0.95, 0.1, 0.6974383867626825],
    [9, 6, 1, 0.9, 0.2, 0.7596879808259505],
    [12, 12, 1, 0.6, 0.1, 0.7408988022630856],
    [15, 20, 3, 0.7, 0.3, 0.4427768879678119],
    [12, 14, 1, 0.95, 0.75, 0.10332664110397326],
    [15, 8, 1, 0.5, 0.5, 0.01582343626371098],
    [20, 4, 1, 0.9, 0.2, 0.7349512003609008],
  ])('of %i and %i seeds, one of %i treatments, of shares %f and %f, is as SciPy has it', (n, m, treatments, p, q, wanted) => {
    const found = power(design(n, m, { treatments }), p, q);
    expect(Math.abs(found / wanted - 1), `${found} is not ${wanted}`).toBeLessThan(1e-3);
  });

  // SciPy 1.10.1: the same sums with betabinom.pmf, chi2.cdf and the integral of of_dishes in outside/outside.py, the
  // days by 2401 points of the normal curve. A table of factors and a line between correlations cost us a little.
  test.each([
    [16, 16, 2, 2, 1, 0.05, 0.7, 0.2, 0.4875591460884016],
    [12, 18, 2, 3, 1, 0.1, 0.8, 0.2, 0.6425291492742106],
  ])('of %i and %i seeds in %i and %i dishes is nearly as SciPy has it', (n, m, some, others, treatments, rho, p, q, wanted) => {
    const found = power(design(n, m, { treatments, rho, dishes: { treated: some, untreated: others } }), p, q);
    expect(Math.abs(found / wanted - 1), `${found} is not ${wanted}`).toBeLessThan(4e-3);
  });

  test('never exceeds its level by more than rounding where the treatment does nothing', () => {
    fc.assert(fc.property(seeds, seeds, share, fc.integer({ min: 1, max: 4 }), (n, m, p, treatments) => {
      expect(power(design(n, m, { treatments }), p, p)).toBeLessThan(0.025 / treatments + 0.002);
    }), { numRuns: 60 });
    for (const p of [0.1, 0.3, 0.5, 0.8]) {
      expect(power(design(48, 48, { dishes: { treated: 4, untreated: 4 }, rho: 0.1 }), p, p)).toBeLessThan(0.027);
    }
  });

  test('rises with what the treatment does, and falls with every treatment beside it and every way dishes differ', () => {
    let before = 0;
    for (const p of [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8]) {
      const found = power(design(24), p, 0.2);
      expect(found).toBeGreaterThan(before);
      expect(power(design(24, 24, { treatments: 3 }), p, 0.2)).toBeLessThan(found);
      before = found;
    }
    const dishes = { treated: 4, untreated: 4 };
    const [alike, unlike] = [0, 0.05].map(rho => power(design(48, 48, { dishes, rho }), 0.5, 0.2));
    expect(unlike).toBeLessThan(alike!);
    expect(alike).toBeLessThan(power(design(48), 0.5, 0.2));
  });

  test('leaves nothing to chance where the outcome decides', () => {
    const { chances } = findingsOf(design(10));
    const at = (a: number, b: number) => chances[a * 11 + b];
    expect([at(10, 0), at(9, 1), at(5, 5), at(4, 8)]).toEqual([1, 1, 0, 0]);
    // 70 % of 30, with a Wilson interval from 52 %, germinate well without it; 20 of them do not.
    const more = findingsOf(design(30)).chances;
    expect(more[25 * 31 + 21]).toBe(0);
    expect(more[25 * 31 + 20]).toBeGreaterThan(0.01);
  });
});
