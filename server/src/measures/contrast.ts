import type { Claim } from './claim.ts';
import { finalTotal, type Course } from './course.ts';
import { newcombe, type Difference, type Share } from './difference.ts';
import { fisher, type FisherTest } from './fisher.ts';
import type { ShareFinding } from './share-test.ts';
import { seedsForOne } from './spread.ts';
import { WEAK } from './weak.ts';

/** A share on both sides of a comparison. */
export interface Contrast {
  readonly treated: Share;
  readonly untreated: Share;
  /** Treated less untreated as shown; its limits hold for every course that the looks allow. */
  readonly difference: Difference;
  /** Of the counts as shown. */
  readonly fisher: FisherTest;
}

export interface Claims {
  readonly better: Claim;
  readonly worse: Claim;
}

/**
 * A share of the seeds, less the lost ones, on both sides. The lower limit of the difference is that of the claim that
 * the treated seed was ahead, the upper one that of the claim that the untreated was: Newcombe's intervals of the least
 * and the most that the looks allow, of as many seeds as the dishes are worth.
 */
export function contrastOf(
  { treated, untreated }: { readonly treated: Share; readonly untreated: Share }, what: 'germinated' | 'sound',
  { better, worse }: Claims,
): Contrast {
  const value = treated.x / treated.n - untreated.x / untreated.n;
  return {
    treated, untreated,
    difference: {
      value,
      low: Math.min(value, claimed(better[what]).low),
      high: Math.max(value, -claimed(worse[what]).low),
    },
    fisher: fisher(treated, untreated),
  };
}

/** The first side of a claim less the second, of as many seeds as the dishes are worth. */
export function claimed({ first, second, spread }: ShareFinding): Difference {
  const factor = seedsForOne(spread);
  return newcombe(worth(first, factor), worth(second, factor));
}

/** The seeds that overdispersed ones are worth: as many times fewer. */
export function worth({ x, n }: Share, overdispersion: number): Share {
  return { x: x / overdispersion, n: n / overdispersion };
}

/** A number of seeds or seedlings of a course. */
export type Count = (course: Course) => number;

export const germinated: Count = course => finalTotal(course, 'germinated');

/**
 * Weak seedlings, as many as the greatest of the totals of leggy, abnormal and dead ones: a leggy seedling that died is
 * one.
 */
const weak: Count = course => Math.min(germinated(course), Math.max(...WEAK.map(what => finalTotal(course, what))));

export const sound: Count = course => germinated(course) - weak(course);

/** One number over another, summed over the batches of a side. */
export function shareOf(batches: readonly Course[], part: Count, whole: Count): Share {
  return {
    x: batches.reduce((sum, batch) => sum + part(batch), 0),
    n: batches.reduce((sum, batch) => sum + whole(batch), 0),
  };
}
