import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { binomialProbabilities, hypergeometric } from '../../server/src/measures/discrete.ts';
import { expectClose } from './helpers.ts';

describe('discrete distributions', () => {
  test('are 1, 16, 36, 16, 1 of 70 for the tea cups', () => {
    const { first, probabilities } = hypergeometric(4, 4, 4);
    expect(first).toBe(0);
    for (const [k, ways] of [1, 16, 36, 16, 1].entries()) expectClose(probabilities[k]!, ways / 70);
  });

  // R 4.2.2: dhyper(18, 20, 20, 25), dhyper(8, 10, 10, 10), dhyper(50, 100, 100, 100).
  test.each([
    [20, 20, 25, 18, 0.00036615720709157933],
    [10, 10, 10, 8, 0.0109604018273],
    [100, 100, 100, 50, 0.11241557570404215],
  ])(
    'agree with dhyper of R: %i and %i seeds, %i germinated, %i in the first', (n1, n2, total, x, p) => {
      const { first, probabilities } = hypergeometric(n1, n2, total);
      expectClose(probabilities[x - first]!, p);
    });

  test('agree with dbinom of R: 3 of 10 at 0.2 (R 4.2.2)', () => {
    expectClose(binomialProbabilities(10, 0.2)[3]!, 0.20132659200000003);
  });

  test('put all on one end when the share is 0 or 1', () => {
    expect([...binomialProbabilities(3, 0)]).toEqual([1, 0, 0, 0]);
    expect([...binomialProbabilities(3, 1)]).toEqual([0, 0, 0, 1]);
    expect([...binomialProbabilities(0, 0.4)]).toEqual([1]);
  });

  test('add up to 1 and have the right mean, for large numbers too', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 2000 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, p) => {
      const probabilities = binomialProbabilities(n, p);
      expect(probabilities.length).toBe(n + 1);
      expect(probabilities.reduce((sum, q) => sum + q, 0)).toBeCloseTo(1, 12);
      expect(probabilities.reduce((sum, q, x) => sum + q * x, 0)).toBeCloseTo(n * p, 8);
    }));
  });

  test('cover exactly the possible counts, with the right mean', () => {
    const seeds = fc.integer({ min: 0, max: 300 });
    fc.assert(fc.property(seeds, seeds, fc.double({ min: 0, max: 1, noNaN: true }), (n1, n2, part) => {
      const total = Math.round(part * (n1 + n2));
      const { first, probabilities } = hypergeometric(n1, n2, total);
      expect(first).toBe(Math.max(0, total - n2));
      expect(first + probabilities.length - 1).toBe(Math.min(n1, total));
      const mean = probabilities.reduce((sum, p, i) => sum + p * (first + i), 0);
      expect(mean).toBeCloseTo(n1 + n2 === 0 ? 0 : (total * n1) / (n1 + n2), 8);
    }));
  });
});
