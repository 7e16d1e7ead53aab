import { binomialProbabilities } from './discrete.ts';
import { rejectionRegion, type RejectionRegion } from './rejection.ts';

/** The power that a design should have, by convention. */
export const WANTED_POWER = 0.8;

/**
 * The chance that Fisher's two-sided test finds a difference between true shares p1 and p2: exact, the sum
 * over all outcomes in the rejection region of their binomial probabilities.
 *
 * @example
 * powerOf(rejectionRegion(12, 12), 0.4, 0.9) // 0.638639456977
 */
export function powerOf(region: RejectionRegion, p1: number, p2: number): number {
  return powerFrom(region, binomialProbabilities(region.n1, p1), binomialProbabilities(region.n2, p2));
}

/**
 * The same for a design that is asked once.
 *
 * @example
 * power(20, 20, 0.35, 0.9) // 0.953195550494
 */
export function power(n1: number, n2: number, p1: number, p2: number): number {
  return powerOf(rejectionRegion(n1, n2), p1, p2);
}

function powerFrom({ n1, n2, from, to }: RejectionRegion, first: Float64Array, second: Float64Array): number {
  let sum = 0;
  for (let total = 0; total <= n1 + n2; total++) {
    const lowest = Math.max(0, total - n2);
    const highest = Math.min(n1, total);
    for (let x = lowest; x < from[total]!; x++) sum += first[x]! * second[total - x]!;
    for (let x = to[total]! + 1; x <= highest; x++) sum += first[x]! * second[total - x]!;
  }
  return Math.min(1, sum);
}
