import { betaBinomialProbabilities, sumProbabilities } from './discrete.ts';
import { findingsOf, type Design, type Findings } from './finding.ts';

/** The power that a design should have, by convention. */
export const WANTED_POWER = 0.8;

/**
 * The chance that the verdict on a trial is "worth repeating" where treated seed germinates with one true share and
 * untreated seed with another: the sum over all outcomes of their chance, times what findingsOf makes of them.
 *
 * @example
 * powerOf(findingsOf(design), 0.7, 0.2)
 */
export function powerOf({ design, chances }: Findings, treated: number, untreated: number): number {
  const first = countsOf(design.treated, design.dishes.treated, treated, design.rho);
  const second = countsOf(design.untreated, design.dishes.untreated, untreated, design.rho);
  let sum = 0;
  for (let a = 0, at = 0; a < first.length; a++) {
    let inner = 0;
    for (let b = 0; b < second.length; b++, at++) inner += second[b]! * chances[at]!;
    sum += first[a]! * inner;
  }
  return Math.min(1, sum);
}

/** The same for a design that is asked once. */
export function power(design: Design, treated: number, untreated: number): number {
  return powerOf(findingsOf(design), treated, untreated);
}

/** Of seeds in dishes of about equal size. */
function countsOf(seeds: number, dishes: number, share: number, rho: number): Float64Array {
  if (rho <= 0) return betaBinomialProbabilities(seeds, share, 0);
  let all: Float64Array = Float64Array.of(1);
  for (let dish = 0; dish < dishes; dish++) {
    const size = Math.floor(((dish + 1) * seeds) / dishes) - Math.floor((dish * seeds) / dishes);
    all = sumProbabilities(all, betaBinomialProbabilities(size, share, rho));
  }
  return all;
}
