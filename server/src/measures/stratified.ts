import { hypergeometric } from './discrete.ts';
import { mantelHaenszel, type Stratum } from './mantel-haenszel.ts';
import { isUndefined } from './measured.ts';
import { upperTail } from './tails.ts';

/** With more seeds than this in all, the normal curve is as good. */
const MOST_SEEDS = 3000;

/**
 * The exact test of one odds ratio over several lots, one-sided: the chance of as many germinated or more in the first
 * samples of all lots together, where in each lot both samples germinate alike. Each lot is compared with itself only.
 *
 * The sum of independent hypergeometric counts. As R's `mantelhaen.test(exact = TRUE, alternative = "greater")`.
 *
 * @example
 * stratifiedGreater([{ first: { x: 3, n: 3 }, second: { x: 0, n: 3 } }]) // 1/20
 */
export function stratifiedGreater(strata: readonly Stratum[]): number {
  const seeds = strata.reduce((sum, { first, second }) => sum + first.n + second.n, 0);
  if (seeds > MOST_SEEDS) return normalGreater(strata);
  let [sums, least, seen] = [Float64Array.of(1), 0, 0];
  for (const { first, second } of strata) {
    const { first: lowest, probabilities } = hypergeometric(first.n, second.n, first.x + second.x);
    const next = new Float64Array(sums.length + probabilities.length - 1);
    for (const [i, a] of sums.entries()) for (const [j, b] of probabilities.entries()) next[i + j]! += a * b;
    [sums, least, seen] = [next, least + lowest, seen + first.x];
  }
  return Math.min(1, sums.slice(seen - least).reduce((sum, probability) => sum + probability, 0));
}

function normalGreater(strata: readonly Stratum[]): number {
  const found = mantelHaenszel(strata);
  return isUndefined(found) ? 1 : upperTail(Math.sign(found.excess) * Math.sqrt(found.corrected.chiSquare));
}
