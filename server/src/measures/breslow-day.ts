import { undefinedBecause, type Undefined } from './measured.ts';
import { informative, type ChiSquare, type Fourfold, type Stratum } from './mantel-haenszel.ts';
import { chiSquareTail } from './tails.ts';

/**
 * Whether the strata have one odds ratio: small p, and lots answer differently, so that one number for all of
 * them would mislead. Against the common odds ratio of Mantel and Haenszel, with Tarone's correction.
 *
 * sum (a - A)^2 / V - (sum (a - A))^2 / sum V with A the count expected under that odds ratio and V its
 * asymptotic variance 1 / (1/A + 1/B + 1/C + 1/D). Breslow & Day 1980, Statistical Methods in Cancer Research
 * I:142; Tarone 1985, Biometrika 72:91-95 (both from memory).
 *
 * @example
 * breslowDay([
 *   { first: { x: 8, n: 10 }, second: { x: 2, n: 10 } },
 *   { first: { x: 5, n: 6 }, second: { x: 2, n: 6 } }], 13.2727272727)
 * // { chiSquare: 0.0689995056, df: 1, p: 0.7927991068 }
 */
export function breslowDay(strata: readonly Stratum[], oddsRatio: number): ChiSquare | Undefined {
  const tables = informative(strata);
  if (tables.length < 2) return undefinedBecause('only one lot can be compared');
  let [sum, excess, variance] = [0, 0, 0];
  for (const table of tables) {
    const expected = expectedCount(table, oddsRatio);
    const { a, b, c, d } = table;
    const move = expected - a;
    const v = 1 / (1 / expected + 1 / (b - move) + 1 / (c - move) + 1 / (d + move));
    sum += move ** 2 / v;
    excess -= move;
    variance += v;
  }
  const chiSquare = Math.max(0, sum - excess ** 2 / variance);
  const df = tables.length - 1;
  return { chiSquare, df, p: chiSquareTail(chiSquare, df) };
}

/**
 * The count a with the margins of the table and a given odds ratio: the root of a quadratic within its
 * bounds.
 */
function expectedCount({ a, b, c, d }: Fourfold, oddsRatio: number): number {
  const [row, column, other] = [a + b, a + c, b + d];
  // A (other - row + A) = odds ratio (row - A) (column - A)
  const square = 1 - oddsRatio;
  const linear = other - row + oddsRatio * (row + column);
  const constant = -oddsRatio * row * column;
  // Without subtracting nearly equal numbers, and right for an odds ratio of 1.
  return (-2 * constant) / (linear + Math.sqrt(linear ** 2 - 4 * square * constant));
}
