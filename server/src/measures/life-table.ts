import { dayFaultOf, stepsOf, waiting, type Course } from './course.ts';

/** The seeds that leave the wait for germination on one day. */
export interface Exit {
  readonly day: number;
  readonly germinated: number;
  /** Seeds of which no more is known than that they had not germinated by this day. */
  readonly censored: number;
}

/** The life table of a sample: its exits in order of the days, one for each day. */
export type LifeTable = readonly Exit[];

/**
 * The exits of the seeds of one or several batches. Germination is the event. Seed that rotted or was lost is
 * censored on the day that it was missed, all that had not germinated on the day of the last check. Seed
 * censored on a day is still at risk on that day. A course that is faulty or untimed has no exits.
 *
 * @example
 * lifeTable([{ sown: 9, checks: [{ day: 4, germinated: 2, lost: 1 }, { day: 6, germinated: 6 }] }])
 * // [{ day: 4, germinated: 2, censored: 1 }, { day: 6, germinated: 4, censored: 2 }]
 */
export function lifeTable(courses: readonly Course[]): LifeTable {
  const byDay = new Map<number, Exit>();
  for (const exit of courses.flatMap(exitsOf)) {
    const { germinated = 0, censored = 0 } = byDay.get(exit.day) ?? {};
    byDay.set(exit.day, {
      day: exit.day,
      germinated: germinated + exit.germinated,
      censored: censored + exit.censored,
    });
  }
  return [...byDay.values()].sort((a, b) => a.day - b.day);
}

function exitsOf(course: Course): readonly Exit[] {
  if (dayFaultOf(course)) return [];
  const steps = stepsOf(course);
  const end = steps.length - 1;
  return steps
    .map(({ day, fresh, gone }, i) => ({ day, germinated: fresh, censored: gone + (i === end ? waiting(course) : 0) }))
    .filter(({ germinated, censored }) => germinated + censored > 0);
}

/** All the seeds of a life table. */
export function seedsOf(table: LifeTable): number {
  return table.reduce((sum, exit) => sum + exit.germinated + exit.censored, 0);
}
