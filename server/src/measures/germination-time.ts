import { germinatedSteps, seedsCounted, type Course } from './course.ts';
import { isUndefined, undefinedBecause, type Known, type Measured, type Undefined } from './measured.ts';

/** A day by interpolation, and the two checks between which the seed in question really germinated. */
export interface GerminationTime extends Known {
  /** Undefined where no check was made before. */
  readonly after: Measured;
  readonly by: number;
}

/** A share of a number of seeds may miss a whole number by its last digit. */
const ROUNDING = 1e-9;

/**
 * The day on which the cumulative count reached a number of seeds, in days from day 0: on a straight line
 * between the check before and the check that found it. Where a check found exactly this number, the day of
 * that check. Before the first check the line starts from no seed on day 0.
 *
 * t_i + (target - c_i) (t_j - t_i) / (c_j - c_i), c_i < target <= c_j. The sources of T50 (below) do not say
 * how to treat the first check or an exact hit; common practice, no source.
 *
 * @example
 * dayOfSeed({ sown: 9, checks: [{ day: 4, germinated: 2 }, { day: 6, germinated: 6 }] }, 3)
 * // { value: 4.5, after: { value: 4 }, by: 6 }
 */
export function dayOfSeed(course: Course, target: number): GerminationTime | Undefined {
  const steps = germinatedSteps(course);
  if (isUndefined(steps)) return steps;
  const reached = steps.find(step => step.germinated >= target - ROUNDING);
  if (!reached) return undefinedBecause('too few germinated');
  const { day, since, fresh, germinated } = reached;
  const beyond = Math.max(0, germinated - target);
  if (isUndefined(since)) {
    return beyond < ROUNDING
      ? { value: day, after: since, by: day }
      : undefinedBecause(`it was reached before the first check, on day ${day}`);
  }
  return { value: day - (beyond / fresh) * (day - since.value), after: since, by: day };
}

/**
 * T50 of Coolbear: the day of germinated seed number (G + 1) / 2, in days.
 *
 * Coolbear, Francis & Grierson 1984, J Exp Bot 35:1609-1617 (from memory).
 */
export function t50Coolbear(course: Course): GerminationTime | Undefined {
  return ofGerminated(course, seeds => (seeds + 1) / 2);
}

/**
 * The day on which a share of the seed that germinated in the end was up. A share of 0.5 is the T50 of
 * Farooq.
 *
 * Farooq, Basra, Ahmad & Hafeez 2005, J Integr Plant Biol 47:187-193 (from memory).
 *
 * @example
 * timeOfGerminated({ sown: 10, checks: [{ day: 4, germinated: 0 }, { day: 6, germinated: 8 }] }, 0.5)
 * // { value: 5, after: { value: 4 }, by: 6 }
 */
export function timeOfGerminated(course: Course, share: number): GerminationTime | Undefined {
  return ofGerminated(course, seeds => seeds * share);
}

/**
 * The day on which a share of all the seed sown (less lost) was up; undefined where that many never
 * germinated. Unlike the other two it cannot be early only because little germinated.
 *
 * Common variant, no source.
 */
export function timeOfSown(course: Course, share: number): GerminationTime | Undefined {
  const found = dayOfSeed(course, seedsCounted(course) * share);
  return isUndefined(found) && found.undefined === 'too few germinated'
    ? undefinedBecause(`fewer than ${(100 * share).toFixed(0)} % of the seed sown germinated`)
    : found;
}

function ofGerminated(course: Course, target: (germinated: number) => number): GerminationTime | Undefined {
  return dayOfSeed(course, target(course.checks.at(-1)?.germinated ?? 0));
}

/** The days of the first and the last check that found germinated seed. */
export interface GerminationSpan {
  /** The check before the first one: the first seed came up after it. */
  readonly after: Measured;
  readonly first: number;
  readonly last: number;
}

export function germinationSpan(course: Course): GerminationSpan | Undefined {
  const steps = germinatedSteps(course);
  if (isUndefined(steps)) return steps;
  const found = steps.filter(step => step.fresh > 0);
  return { after: found[0]!.since, first: found[0]!.day, last: found.at(-1)!.day };
}
