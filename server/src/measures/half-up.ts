import type { Course } from './course.ts';
import { atLeast, atMost, until } from './looks.ts';
import { undefinedBecause, type Undefined } from './measured.ts';

/** A day that lies between two looks: after the one, by the other. */
export interface DayLimits {
  /** Undefined where nobody had looked before. */
  readonly after: number | undefined;
  readonly by: number;
}

/**
 * When half of the germinated seed of some batches was up, as far as the looks tell: seed (G + 1) / 2 after Coolbear,
 * Francis & Grierson 1984 (from memory), counted up to an age. With several batches no line is drawn between looks
 * that were not made on one day.
 *
 * @example
 * halfUp([{ sown: 9, checks: [{ day: 10, germinated: 1 }, { day: 20, germinated: 5 }] }], 20) // { after: 10, by: 20 }
 */
export function halfUp(courses: readonly Course[], age: number): DayLimits | Undefined {
  const seen = courses.map(course => until(course, age));
  const total = seen.reduce((sum, { checks }) => sum + (checks.at(-1)?.germinated ?? 0), 0);
  return dayOf(seen, (total + 1) / 2, total === 0 ? 'nothing germinated' : undefined);
}

/** The same for half of all the seed, less what was lost. */
export function halfOfAllUp(courses: readonly Course[], age: number): DayLimits | Undefined {
  const seen = courses.map(course => until(course, age));
  const seeds = seen.reduce((sum, { sown, checks }) => sum + sown - (checks.at(-1)?.lost ?? 0), 0);
  return dayOf(seen, seeds / 2, undefined);
}

function dayOf(courses: readonly Course[], target: number, fault: string | undefined): DayLimits | Undefined {
  const untimed = courses.find(course => course.untimed !== undefined)?.untimed;
  if (untimed ?? fault) return undefinedBecause((untimed ?? fault)!);
  const days = [...new Set(courses.flatMap(({ checks }) => checks.map(({ day }) => day)))].sort((a, b) => a - b);
  const total = (day: number, of: typeof atLeast): number => (
    courses.reduce((sum, course) => sum + of(course, 'germinated', day), 0));
  const by = days.find(day => total(day, atLeast) >= target);
  if (by === undefined) return undefinedBecause('less than half of it germinated');
  const after = days.findLast(day => day < by && total(day, atMost) < target);
  return { after: after ?? (by > 0 ? 0 : undefined), by };
}

/** Days by which one side was earlier (negative) or later, at the least and at the most. */
export interface DaysApart {
  readonly least: number;
  readonly most: number;
}

/** Undefined where the day of one side is not known to lie after any look. */
export function daysApart(first: DayLimits, second: DayLimits): DaysApart | undefined {
  if (first.after === undefined || second.after === undefined) return undefined;
  return { least: first.after - second.by, most: first.by - second.after };
}
