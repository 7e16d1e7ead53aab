import { binomial } from './discrete.ts';

/**
 * A range that chance exceeds this rarely is not put down to chance; as in the rule books of seed testing.
 */
const RARELY = 0.025;

/**
 * The widest range between replicates that is still put down to chance, in seeds: the smallest r that k
 * binomial counts of `size` seeds each exceed with a probability of at most 0.025. A computed value, not one
 * of a rule book: it differs from the published table in some rows.
 *
 * P(range <= r) = sum over the smallest count a of (F(a + r) - F(a - 1))^k - (F(a + r) - F(a))^k. Common
 * practice, no source.
 *
 * @example
 * computedRange(4, 25, 0.9) // 6
 */
export function computedRange(replicates: number, size: number, share: number): number {
  // below[i]: the probability of a count under the smallest one that can happen plus i.
  const below = [0];
  for (const probability of binomial(size, share).probabilities) below.push(below.at(-1)! + probability);
  let [range, enough] = [0, below.length - 2];
  while (range < enough) {
    const middle = Math.floor((range + enough) / 2);
    if (1 - withinRange(below, replicates, middle) > RARELY) range = middle + 1;
    else enough = middle;
  }
  return range;
}

function withinRange(below: readonly number[], replicates: number, range: number): number {
  let sum = 0;
  for (let least = 0; least < below.length - 1; least++) {
    const above = below[Math.min(below.length - 1, least + range + 1)]!;
    sum += (above - below[least]!) ** replicates - (above - below[least + 1]!) ** replicates;
  }
  return sum;
}
