import { undefinedBecause, type Interval, type Undefined } from './measured.ts';
import { betaPoint, deviate } from './tails.ts';

/** The confidence of every interval that is not told otherwise. */
export const CONFIDENCE = 0.95;

/**
 * Wilson's score interval for x of n, as shares from 0 to 1.
 *
 * (2x + z^2 -/+ z sqrt(z^2 + 4x(1 - x/n))) / (2(n + z^2)). Wilson 1927, J Am Stat Assoc 22:209-212; its form
 * as Newcombe 1998, Stat Med 17:857-872, method 3 (both from memory). x and n need not be whole: an
 * overdispersed sample counts as fewer seeds than were sown. For n = 0 nothing is known: 0 to 1.
 *
 * @example
 * wilson(17, 20) // { low: 0.6395811353, high: 0.9476312541 }
 */
export function wilson(x: number, n: number, confidence = CONFIDENCE): Interval {
  if (n === 0) return { low: 0, high: 1 };
  const z2 = deviate(confidence) ** 2;
  const centre = 2 * x + z2;
  const width = Math.sqrt(z2 * (z2 + 4 * x * (1 - x / n)));
  const scale = 2 * (n + z2);
  // At the ends the formula gives 0 and 1 but for the last digit.
  return {
    low: x <= 0 ? 0 : (centre - width) / scale,
    high: x >= n ? 1 : (centre + width) / scale,
  };
}

/**
 * The exact interval of Clopper and Pearson for x of n, as shares from 0 to 1: it never covers less than it
 * says, and mostly more.
 *
 * Quantiles of Beta(x, n - x + 1) and Beta(x + 1, n - x). Clopper & Pearson 1934, Biometrika 26:404-413 (from
 * memory).
 *
 * @example
 * clopperPearson(0, 20) // { low: 0, high: 0.1684334710 }
 */
export function clopperPearson(x: number, n: number, confidence = CONFIDENCE): Interval {
  const tail = (1 - confidence) / 2;
  return {
    low: x === 0 ? 0 : betaPoint(tail, x, n - x + 1),
    high: x === n ? 1 : betaPoint(1 - tail, x + 1, n - x),
  };
}

/** A share x / n, from 0 to 1, with what is known of it. */
export interface Proportion {
  readonly x: number;
  readonly n: number;
  readonly value: number;
  readonly wilson: Interval;
  readonly exact: Interval;
}

/**
 * A share with both its 95 % intervals, or the reason why there is none.
 *
 * @example
 * proportion(9, 10)
 * // x 9, n 10, value 0.9, wilson { low: 0.5958, high: 0.9821 }, exact { low: 0.5550, high: 0.9975 }
 */
export function proportion(x: number, n: number): Proportion | Undefined {
  if (!(n > 0)) return undefinedBecause('there are no seeds to take a percentage of');
  return { x, n, value: x / n, wilson: wilson(x, n), exact: clopperPearson(x, n) };
}
