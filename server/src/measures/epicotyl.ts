import { faultOf, finalTotal, stepsOf, type Course, type Total } from './course.ts';
import { derived, isUndefined, measured, undefinedBecause, type Measured, type Undefined } from './measured.ts';

/**
 * The wait between the radicle and the first true leaf. Where the epicotyl is dormant of its own, it spans a
 * second winter.
 */
export interface EpicotylDelay {
  /** Seedlings with a first leaf: the delay is about these. */
  readonly leafed: number;
  /** Seedlings that have germinated and have no leaf yet, less those that died. */
  readonly waiting: number;
  /**
   * Mean days from germinated to first leaf, each counted on the day of its check. Seedlings are not told
   * apart: the first to germinate are taken for the first with a leaf.
   */
  readonly mean: number;
  /** The same if the seed germinated right before, and the leaf came right after, its check. */
  readonly longest: Measured;
  /** The same if the seed germinated right after the check before it, and so on: at least 0. */
  readonly shortest: Measured;
}

/**
 * The epicotyl delay of a course; undefined until a first leaf was counted.
 *
 * The seed found on a day germinated between that check and the one before it, and so did the leaf: the true
 * mean lies between `shortest` and `longest`. Common practice, no source.
 *
 * @example
 * epicotylDelay({ sown: 5, checks: [
 *   { day: 20, germinated: 0 }, { day: 30, germinated: 2 }, { day: 90, germinated: 2 },
 *   { day: 100, germinated: 2, leaf: 1 }] })
 * // leafed 1, waiting 1, mean 70, shortest 60, longest 80
 */
export function epicotylDelay(course: Course): EpicotylDelay | Undefined {
  const fault = faultOf(course);
  if (fault) return fault;
  const leafed = finalTotal(course, 'leaf');
  const germinated = finalTotal(course, 'germinated');
  if (leafed === 0) return undefinedBecause('no first leaf was counted');
  if (leafed > germinated) return undefinedBecause('more first leaves than germinated seed were counted');
  const radicles = firstSeeds(course, 'germinated', leafed);
  const leaves = firstSeeds(course, 'leaf', leafed);
  return {
    leafed,
    waiting: Math.max(0, germinated - leafed - finalTotal(course, 'died')),
    mean: leaves.found - radicles.found,
    longest: derived(radicles.since, since => leaves.found - since),
    shortest: derived(leaves.since, since => Math.max(0, since - radicles.found)),
  };
}

/**
 * Mean days, over the first so many seeds, of the check that found the stage and of the check before that.
 */
function firstSeeds(course: Course, stage: Total, seeds: number): { found: number; since: Measured } {
  const checks = course.checks.map(check => ({ day: check.day, germinated: check[stage] ?? 0 }));
  let left = seeds;
  let found = 0;
  let since: Measured = measured(0);
  for (const step of stepsOf({ sown: course.sown, checks })) {
    const share = Math.min(left, step.fresh) / seeds;
    if (share === 0) continue;
    left -= step.fresh;
    found += share * step.day;
    const from = step.since;
    since = isUndefined(from) ? from : derived(since, sum => sum + share * from.value);
    if (left <= 0) break;
  }
  return { found, since };
}
