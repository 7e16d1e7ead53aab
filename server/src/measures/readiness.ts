import { faultOf, type Course } from './course.ts';
import { germinated, shareOf } from './contrast.ts';
import { halfOfAllUp } from './half-up.ts';
import { isUndefined, undefinedBecause, type Interval, type Undefined } from './measured.ts';
import { pool } from './replicates.ts';
import { seedsOf } from './surely.ts';
import { THRESHOLDS } from './thresholds.ts';

/** How readily untreated seed came up. */
export interface Readiness {
  readonly x: number;
  readonly n: number;
  readonly interval: Interval;
  /** The day of the check that found half of the seed sown up: nobody knows how long before it was. */
  readonly halfBy: number;
  /** Whether this is well enough to go without a treatment, by the thresholds `ready...`. */
  readonly ready: boolean;
}

/**
 * Whether seed germinates well as it is: on this rests the advice not to treat such a plant. For untreated
 * batches of one lot. Undefined when a batch cannot be measured or half of the seed never germinated. Seed that was
 * lost after the first germinated may have been any: it counts as not germinated.
 *
 * @example
 * readiness([{ sown: 20, checks: [{ day: 8, germinated: 2 }, { day: 12, germinated: 18 }] }])
 * // x 18, n 20, interval { low: 0.6990, high: 0.9721 }, halfBy 12, ready true
 */
export function readiness(untreated: readonly Course[]): Readiness | Undefined {
  if (untreated.length === 0) return undefinedBecause('there is no untreated batch');
  const fault = untreated.map(faultOf).find(found => found !== undefined);
  if (fault) return fault;
  const half = halfOfAllUp(untreated, Infinity);
  if (isUndefined(half)) return half;
  const { x, n, interval } = pool(untreated.map(course => shareOf([course], germinated, seedsOf)));
  const ready = half.by <= THRESHOLDS.readyDays.value && isReadyShare({ x, n, low: interval.low });
  return { x, n, interval, halfBy: half.by, ready };
}

/** Whether x of n seeds, with this lower limit of the 95 % interval, are enough to go without a treatment. */
export function isReadyShare({ x, n, low }: { readonly x: number; readonly n: number; readonly low: number }): boolean {
  const { readyShare, readyLow, readySeeds } = THRESHOLDS;
  return n >= readySeeds.value && x / n >= readyShare.value && low >= readyLow.value;
}
