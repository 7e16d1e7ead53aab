import type { Course } from './course.ts';
import { lifeTable, type LifeTable } from './life-table.ts';
import { isFinished, lastLook } from './looks.ts';
import { undefinedBecause, type Undefined } from './measured.ts';

/** The days on which every one of some batches was looked at; a finished batch needs no look any more. */
export function sharedLooks(courses: readonly Course[]): readonly number[] {
  const days = new Set(courses.flatMap(({ checks }) => checks.map(({ day }) => day)));
  return [...days].sort((a, b) => a - b).filter(day => courses.every(course => (
    course.checks.some(check => check.day === day) || (isFinished(course) && lastLook(course) <= day))));
}

/** Looks that lie no further apart count as one. Common practice, no source. */
export const ONE_LOOK_DAYS = 1;

/**
 * The latest age at which some batches can be held against each other: all of them were looked at then, or a day
 * before. What came up since the last look of one of them would count as nothing. Undefined if there is no such age.
 *
 * @example
 * // Looked at on days 10 and 28, and on days 10 and 35.
 * ageTogether(dishes) // 10
 */
export function ageTogether(courses: readonly Course[]): number | undefined {
  const days = courses.flatMap(({ checks }) => checks.map(({ day }) => day)).sort((a, b) => a - b);
  return days.findLast(age => courses.every(course => (isFinished(course) && lastLook(course) <= age)
    || course.checks.some(({ day }) => day <= age && day >= age - ONE_LOOK_DAYS)));
}

/**
 * The life tables of several sides, with nothing but the days on which every batch was looked at: seed counts on the
 * first such day on which it was surely up. Undefined where there are fewer than two such days.
 *
 * @example
 * // One side looked at on days 4, 6 and 8, the other on days 4 and 8: all that the first found on day 6 counts on day
 * 8.
 */
export function sharedTables(sides: readonly (readonly Course[])[]): readonly LifeTable[] | Undefined {
  const days = sharedLooks(sides.flat());
  if (days.length < 2) return undefinedBecause('there are no two days on which all batches were looked at');
  return sides.map(side => lifeTable(side.map(course => ({
    ...course,
    checks: days.flatMap(day => {
      const known = course.checks.findLast(check => check.day <= day);
      return known ? [{ ...known, day }] : [];
    }),
  }))));
}
