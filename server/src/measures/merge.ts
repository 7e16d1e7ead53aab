import type { Course, Total } from './course.ts';

/**
 * The germination of several batches as one: on each day that one of them was checked, the sum of what was
 * known of all (seedlings are left out). A batch that was not checked that day counts with its check before.
 * Totals and days found are exact; the days since when a seed may have germinated are those of the merged
 * checks and too late for some, so bounds are not taken from it.
 *
 * @example
 * mergeCourses([
 *   { sown: 5, checks: [{ day: 4, germinated: 2 }] },
 *   { sown: 5, checks: [{ day: 6, germinated: 3 }] }])
 * // sown 10, 2 germinated by day 4 and 5 by day 6
 */
export function mergeCourses(courses: readonly Course[]): Course {
  const days = new Set(courses.flatMap(({ checks }) => checks.map(({ day }) => day)));
  const untimed = courses.find(course => course.untimed !== undefined)?.untimed;
  return {
    ...(untimed !== undefined && { untimed }),
    sown: courses.reduce((sum, { sown }) => sum + sown, 0),
    checks: [...days].sort((a, b) => a - b).map(day => {
      const known = courses.map(({ checks }) => checks.findLast(check => check.day <= day));
      const total = (what: Total): number => known.reduce((sum, check) => sum + (check?.[what] ?? 0), 0);
      return { day, germinated: total('germinated'), rotted: total('rotted'), lost: total('lost') };
    }),
  };
}
