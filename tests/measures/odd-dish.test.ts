import { describe, expect, test } from 'vitest';
import { binomialProbabilities } from '../../server/src/measures/discrete.ts';
import { oddDish } from '../../server/src/measures/odd-dish.ts';

const of = (n: number, ...counts: number[]) => counts.map(x => ({ x, n }));

describe('the odd dish', () => {
  test('is the one that does not go with the others', () => {
    const odd = oddDish(of(25, 18, 18, 8, 18))!;
    expect(odd).toMatchObject({ index: 2, dish: { x: 8, n: 25 }, others: { x: 54, n: 75 } });
    // SciPy 1.17: 4 * fisher_exact([[8, 54], [17, 21]]).pvalue
    expect(odd.p).toBeCloseTo(4 * 0.0006680660330396106, 12);
  });

  test.each([
    ['chance explains it', of(25, 18, 18, 14, 18)],
    // SciPy 1.17: fisher_exact([[11, 54], [14, 21]]).pvalue is 0.0155: below 0.025 by itself, of four dishes not.
    ['one of four would come so far', of(25, 18, 18, 11, 18)],
    ['there are two', of(25, 18, 2)],
    ['the others differ too', of(25, 25, 20, 8, 1)],
    ['all or none came up', of(25, 25, 25, 25)],
  ])('is not named where %s', (_, dishes) => {
    expect(oddDish(dishes)).toBeUndefined();
  });

  test.each([[6, 3, 0.5], [6, 3, 0.2], [12, 3, 0.5], [6, 4, 0.5], [6, 4, 0.8]])(
    'of dishes of %i seeds, %i of them, that germinate alike (%d) is named 1 time in 40 at the most', (seeds, dishes, share) => {
      const chances = binomialProbabilities(seeds, share);
      let named = 0;
      // Every outcome of all the dishes, with its probability.
      const go = (counts: readonly number[], chance: number): void => {
        if (counts.length < dishes) for (const [x, p] of chances.entries()) go([...counts, x], chance * p);
        else if (oddDish(of(seeds, ...counts))) named += chance;
      };
      go([], 1);
      expect(named).toBeLessThanOrEqual(0.025);
    });
});
