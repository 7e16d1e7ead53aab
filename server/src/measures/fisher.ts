import { hypergeometric } from './discrete.ts';
import type { Share } from './difference.ts';

/** The usual level of significance. */
const LEVEL = 0.05;

/**
 * Tables whose probabilities differ by less than this share count as equally likely. Rounding would else
 * split exact ties; R and SciPy use the same value.
 */
const TIE = 1e-7;

export interface FisherTest {
  /** Tables at most as likely as the one seen. */
  readonly twoSided: number;
  /** As many or more in the first sample. */
  readonly greater: number;
  /** As many or fewer in the first sample. */
  readonly less: number;
}

/**
 * Fisher's exact test of two shares: x of n in each sample, whole numbers.
 *
 * Two-sided: the sum of the hypergeometric probabilities that do not exceed that of the table seen, as R and
 * SciPy do it (doubling the one-sided p gives other values). Fisher 1935, The Design of Experiments (from
 * memory).
 *
 * @example
 * fisher({ x: 3, n: 4 }, { x: 1, n: 4 }).twoSided // 34/70 = 0.4857142857
 */
export function fisher(first: Share, second: Share): FisherTest {
  const { first: lowest, probabilities } = hypergeometric(first.n, second.n, first.x + second.x);
  const seen = first.x - lowest;
  const likely = probabilities[seen] ?? 0;
  let [twoSided, greater, less] = [0, 0, 0];
  for (const [i, probability] of probabilities.entries()) {
    if (asUnlikely(probability, likely)) twoSided += probability;
    if (i >= seen) greater += probability;
    if (i <= seen) less += probability;
  }
  return { twoSided: Math.min(1, twoSided), greater: Math.min(1, greater), less: Math.min(1, less) };
}

/**
 * Whether a p-value reaches a level. With room for rounding: 3 of 3 against 0 of 3 has a one-sided p of
 * exactly 1/20, which computes to 0.05000000000000001.
 *
 * @example
 * reaches(0.05000000000000001, 0.05) // true
 */
export function reaches(p: number, level = LEVEL): boolean {
  return p <= level * (1 + TIE);
}

/** Whether a table of this probability is at most as likely as the other. */
export function asUnlikely(probability: number, other: number): boolean {
  return probability <= other * (1 + TIE);
}
