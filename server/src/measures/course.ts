import { isUndefined, measured, undefinedBecause, type Measured, type Undefined } from './measured.ts';

/**
 * What was known after one check: totals since the start, not what was new. A total that is left out is 0.
 *
 * `day` counts from day 0, which the caller chooses (sowing, else the end of the soak). It may be 0 or
 * negative: some seed germinates while it is chilled, before it is sown.
 */
export interface Check {
  readonly day: number;
  /** Radicle out; these stay germinated whatever becomes of the seedling. */
  readonly germinated: number;
  readonly emerged?: number;
  readonly leaf?: number;
  readonly leggy?: number;
  readonly abnormal?: number;
  /** Seedlings that died: they had germinated. */
  readonly died?: number;
  /** Seeds that rotted before they germinated. */
  readonly rotted?: number;
  /** Seeds eaten or dropped: they leave the denominator. */
  readonly lost?: number;
}

/** The seeds that had not germinated, sorted by cutting them open at the end. */
export interface CutTest {
  readonly fresh: number;
  readonly hard: number;
  readonly dead: number;
  readonly empty: number;
}

/**
 * One batch as a trial sees it: the seeds sown and what each check found, in order of the days. A check that
 * found nothing new belongs to it too: it says when seed had not germinated yet.
 */
export interface Course {
  readonly sown: number;
  readonly checks: readonly Check[];
  readonly cut?: CutTest;
  /** The batch was cut open or thrown away after its last check, or is left out from there on: nothing can follow. */
  readonly closed?: boolean;
  /** The day on which the first of its seedlings left: what became of them is not known. */
  readonly seedlingsUntil?: number;
  /** It ends where seed that had not germinated was taken out, though that or the rest may be counted again. */
  readonly cutShort?: boolean;
  /** Why days from day 0 say nothing of its seed, where they do not: it was sown in portions. */
  readonly untimed?: string;
}

/** What one check day added. */
export interface Step {
  readonly day: number;
  /** The check before, so that the seed of this step germinated after it; day 0 before the first check. */
  readonly since: Measured;
  /** Newly germinated seeds. */
  readonly fresh: number;
  /** Germinated seeds in all. */
  readonly germinated: number;
  /** Seeds that left without germinating: newly rotted or lost. */
  readonly gone: number;
}

const TOTALS = [
  'germinated', 'emerged', 'leaf', 'leggy', 'abnormal', 'died', 'rotted', 'lost',
] as const satisfies readonly (keyof Check)[];

export type Total = typeof TOTALS[number];

/** The total at the last check, 0 before the first one. */
export function finalTotal(course: Course, what: Total): number {
  return course.checks.at(-1)?.[what] ?? 0;
}

/** The seeds that count: sown less lost. */
export function seedsCounted(course: Course): number {
  return course.sown - finalTotal(course, 'lost');
}

/** The seeds that have neither germinated nor left: they may still germinate. */
export function waiting(course: Course): number {
  return course.sown - finalTotal(course, 'germinated') - finalTotal(course, 'rotted') - finalTotal(course, 'lost');
}

/**
 * Why nothing can be measured on this course, or nothing if it can. Every measure of a course asks this
 * first, so that a slip in the journal gives a reason and not a wrong number.
 *
 * @example
 * faultOf({ sown: 5, checks: [{ day: 8, germinated: 6 }] })
 * // { undefined: 'more seeds are accounted for on day 8 than were sown' }
 */
export function faultOf(course: Course): Undefined | undefined {
  const { sown, checks } = course;
  if (!(sown >= 0)) return undefinedBecause('the number of seeds sown is unknown');
  if (checks.length === 0) return undefinedBecause('no counts yet');
  for (const [i, check] of checks.entries()) {
    const before = checks[i - 1];
    if (before && before.day > check.day) return undefinedBecause(`day ${check.day} comes after day ${before.day}`);
    for (const what of TOTALS) {
      const total = check[what] ?? 0;
      if (!(total >= 0)) return undefinedBecause(`the total of ${what} on day ${check.day} is not a count`);
      if (total < (before?.[what] ?? 0)) return undefinedBecause(`the total of ${what} goes down on day ${check.day}`);
    }
    if (check.germinated + (check.rotted ?? 0) + (check.lost ?? 0) > sown) {
      return undefinedBecause(`more seeds are accounted for on day ${check.day} than were sown`);
    }
  }
  return seedsCounted(course) > 0 ? undefined : undefinedBecause('no seeds are left in the count');
}

/**
 * Why the cut test says nothing of the seed that was left, or nothing if it does.
 *
 * @example
 * cutFaultOf({ sown: 5, checks: [{ day: 8, germinated: 3 }], cut: { fresh: 1, hard: 0, dead: 0, empty: 0 } })
 * // { undefined: 'the cut test sorts 1, but 2 had not germinated' }
 */
export function cutFaultOf(course: Course): Undefined | undefined {
  const { cut } = course;
  if (!cut) return undefinedBecause('there was no cut test');
  const [sorted, left] = [cut.fresh + cut.hard + cut.dead + cut.empty, waiting(course)];
  return sorted === left
    ? undefined
    : undefinedBecause(`the cut test sorts ${sorted}, but ${left} had not germinated`);
}

/**
 * One step for each check day; several checks on one day are one step, so splitting a count changes nothing.
 *
 * @example
 * stepsOf({ sown: 9, checks: [{ day: 4, germinated: 0 }, { day: 6, germinated: 5 }] })[1]
 * // { day: 6, since: { value: 4 }, fresh: 5, germinated: 5, gone: 0 }
 */
export function stepsOf(course: Course): readonly Step[] {
  const last = course.checks.filter((check, i) => course.checks[i + 1]?.day !== check.day);
  return last.map((check, i) => {
    const before = last[i - 1];
    return {
      day: check.day,
      since: before ? measured(before.day) : sinceOrigin(check.day),
      fresh: check.germinated - (before?.germinated ?? 0),
      germinated: check.germinated,
      gone: goneBy(check) - (before ? goneBy(before) : 0),
    };
  });
}

function sinceOrigin(day: number): Measured {
  return day > 0 ? measured(0) : undefinedBecause('no check before the first germination');
}

function goneBy(check: Check): number {
  return (check.rotted ?? 0) + (check.lost ?? 0);
}

/** Why no day can be given for the seed of this course, or nothing if it can. */
export function dayFaultOf(course: Course): Undefined | undefined {
  return faultOf(course) ?? (course.untimed === undefined ? undefined : undefinedBecause(course.untimed));
}

/** Seed of a faultless course that has germinated, with its steps; or why there is none. */
export function germinatedSteps(course: Course): readonly Step[] | Undefined {
  const fault = dayFaultOf(course);
  if (fault) return fault;
  return finalTotal(course, 'germinated') > 0 ? stepsOf(course) : undefinedBecause('nothing germinated');
}

/** As germinatedSteps, for indices that divide by the day: these have no meaning for seed up by day 0. */
export function stepsAfterOrigin(course: Course): readonly Step[] | Undefined {
  const steps = germinatedSteps(course);
  if (isUndefined(steps)) return steps;
  return steps.some(step => step.day <= 0 && step.fresh > 0)
    ? undefinedBecause('seed had germinated by day 0')
    : steps;
}
