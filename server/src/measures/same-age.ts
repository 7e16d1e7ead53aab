import { cutFaultOf, waiting, type Course } from './course.ts';

/** Batches brought to one age, so that their totals can be compared. */
export interface SameAge {
  /**
   * The day up to which they are counted; the last check of the batch that was watched for the shortest time.
   */
  readonly day: number;
  readonly sides: readonly (readonly Course[])[];
  /** For each side the seeds that may still germinate and would change the comparison; 0 where it is settled. */
  readonly open: readonly number[];
}

/**
 * Cuts batches back to the age that all of them reached. Otherwise the batch that was watched for longer, or
 * was counted today before the other one, would have more germinated for that reason alone. A batch in which
 * no seed is left that could germinate is finished and stays as it is, however early that was. One that was cut
 * open or thrown away with sound seed in it was watched up to its last check only. Of the checks around that
 * age, the nearest counts.
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
  // No later check of a batch counts than the last one of a batch that is closed.
  const closed = Math.min(...open.filter(isClosed).map(lastDay));
  const mayFollow = (course: Course): boolean => !isClosed(course) && !isFinished(course) && lastDay(course) < closed;
  return {
    day,
    sides: sides.map(side => side.map(course => cutBack(course, day))),
    open: sides.map(side => side.filter(mayFollow).reduce((sum, course) => sum + waiting(course), 0)),
  };
}

function isFinished(course: Course): boolean {
  const { cut } = course;
  return waiting(course) === 0 || (cut !== undefined && !cutFaultOf(course) && cut.fresh + cut.hard === 0);
}

function isClosed({ closed, cut }: Course): boolean {
  return closed === true || cut !== undefined;
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
