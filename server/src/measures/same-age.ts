import { waiting, type Course } from './course.ts';

/** Batches brought to one age, so that their totals can be compared. */
export interface SameAge {
  /**
   * The day up to which they are counted; the last check of the batch that was watched for the shortest time.
   */
  readonly day: number;
  readonly sides: readonly (readonly Course[])[];
}

/**
 * Cuts batches back to the age that all of them reached. Otherwise the batch that was watched for longer, or
 * was counted today before the other one, would have more germinated for that reason alone. A batch that is
 * finished (cut, or no seed is left to germinate) stays as it is. Of the checks around that age, the nearest
 * counts.
 *
 * Courses must be without fault. Common practice, no source.
 *
 * @example
 * sameAge([[{ sown: 9, checks: [{ day: 10, germinated: 1 }, { day: 20, germinated: 5 }] }],
 *   [{ sown: 9, checks: [{ day: 11, germinated: 2 }] }]])
 * // day 11; the first side ends with its check on day 10
 */
export function sameAge(sides: readonly (readonly Course[])[]): SameAge {
  const all = sides.flat();
  const open = all.filter(course => !isFinished(course));
  const day = open.length > 0 ? Math.min(...open.map(lastDay)) : Math.max(...all.map(lastDay));
  return { day, sides: sides.map(side => side.map(course => cutBack(course, day))) };
}

function isFinished(course: Course): boolean {
  return course.cut !== undefined || waiting(course) === 0;
}

function lastDay(course: Course): number {
  return course.checks.at(-1)!.day;
}

function cutBack(course: Course, day: number): Course {
  const near = course.checks.map(check => Math.abs(check.day - day));
  const last = near.lastIndexOf(Math.min(...near));
  // Two checks may be equally near: the earlier day, with all the checks of that day.
  const nearest = Math.min(...course.checks.filter((_, i) => near[i] === near[last]).map(check => check.day));
  return { ...course, checks: course.checks.filter(check => check.day <= nearest) };
}
