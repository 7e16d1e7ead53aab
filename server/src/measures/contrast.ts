import { finalTotal, type Course } from './course.ts';
import { newcombe, type Difference, type Share } from './difference.ts';
import { fisher, type FisherTest } from './fisher.ts';

/** A share on both sides of a comparison. */
export interface Contrast {
  readonly treated: Share;
  readonly untreated: Share;
  /** Treated less untreated, with Newcombe's interval; widened where replicates are overdispersed. */
  readonly difference: Difference;
  /** Where replicates are overdispersed: of the seeds that they are worth, rounded to whole ones. */
  readonly fisher: FisherTest;
}

/**
 * A share on both sides, which must not be empty, with interval and test. `overdispersion` as in replicates.
 *
 * @example
 * contrast({ x: 18, n: 20 }, { x: 7, n: 20 })
 * // difference { value: 0.55, low: 0.2540831339, high: 0.7335740853 }, fisher.twoSided 0.0007716281
 */
export function contrast(treated: Share, untreated: Share, overdispersion = 1): Contrast {
  const [a, b] = [worth(treated, overdispersion), worth(untreated, overdispersion)];
  return {
    treated,
    untreated,
    difference: newcombe(a, b),
    fisher: fisher(rounded(a), rounded(b)),
  };
}

/** The seeds that overdispersed ones are worth: as many times fewer. */
export function worth({ x, n }: Share, overdispersion: number): Share {
  return { x: x / overdispersion, n: n / overdispersion };
}

/** The nearest whole seeds; one at least. */
export function rounded({ x, n }: Share): Share {
  return { x: Math.round(x), n: Math.max(1, Math.round(n)) };
}

/** A number of seeds or seedlings of a course. */
export type Count = (course: Course) => number;

export const germinated: Count = course => finalTotal(course, 'germinated');

/** Leggy, abnormal and died together, each seedling counted under one of them; never more than germinated. */
export const weak: Count = course => Math.min(
  germinated(course),
  finalTotal(course, 'leggy') + finalTotal(course, 'abnormal') + finalTotal(course, 'died'),
);

export const sound: Count = course => germinated(course) - weak(course);

/** One number over another, summed over the batches of a side. */
export function shareOf(batches: readonly Course[], part: Count, whole: Count): Share {
  return {
    x: batches.reduce((sum, batch) => sum + part(batch), 0),
    n: batches.reduce((sum, batch) => sum + whole(batch), 0),
  };
}
