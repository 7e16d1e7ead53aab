import { cutFaultOf, waiting, type Course, type Total } from './course.ts';

/**
 * What the looks at a batch allow at an age at which nobody may have looked. Nothing is guessed between two looks: a
 * total was at least what the look before had found, and at most what the look after found. Courses must be without
 * fault; ages and looks are days from day 0.
 */

/** No seed is left that could germinate: all did or rotted, or the cut test found neither fresh nor hard seed. */
export function isFinished(course: Course): boolean {
  const { cut } = course;
  return waiting(course) === 0 || (cut !== undefined && !cutFaultOf(course) && cut.fresh + cut.hard === 0);
}

/** Nobody will look again. */
export function isClosed({ closed, cut }: Course): boolean {
  return closed === true || cut !== undefined;
}

export function lastLook({ checks }: Course): number {
  return checks.at(-1)!.day;
}

/** The last look up to an age; undefined where there was none by then. */
export function lookBefore({ checks }: Course, age: number): number | undefined {
  return checks.findLast(({ day }) => day <= age)?.day;
}

/**
 * The first look from an age on; undefined where there was none any more. A finished batch stays as it is, so that its
 * last look stands for every later one.
 */
export function lookAfter(course: Course, age: number): number | undefined {
  return course.checks.find(({ day }) => day >= age)?.day ?? (isFinished(course) ? lastLook(course) : undefined);
}

/**
 * The least that a total was at an age.
 *
 * @example
 * atLeast({ sown: 9, checks: [{ day: 10, germinated: 1 }, { day: 20, germinated: 5 }] }, 'germinated', 14) // 1
 */
export function atLeast({ checks }: Course, what: Total, age: number): number {
  return checks.findLast(({ day }) => day <= age)?.[what] ?? 0;
}

/**
 * The most that a total was at an age; the last one where nobody looked any more. Several checks of one day count as
 * the last of them.
 *
 * @example
 * atMost({ sown: 9, checks: [{ day: 10, germinated: 1 }, { day: 20, germinated: 5 }] }, 'germinated', 14) // 5
 */
export function atMost({ checks }: Course, what: Total, age: number): number {
  const first = checks.find(({ day }) => day >= age)?.day ?? Infinity;
  return checks.findLast(({ day }) => day <= first)?.[what] ?? 0;
}

/** Seeds of some batches that were found germinated at looks after an age. */
export function foundAfter(courses: readonly Course[], age: number): number {
  return courses.reduce((sum, course) => (
    sum + (course.checks.at(-1)?.germinated ?? 0) - atLeast(course, 'germinated', age)), 0);
}

/** A batch cut back to the looks up to an age. */
export function until(course: Course, age: number): Course {
  return { ...course, checks: course.checks.filter(({ day }) => day <= age) };
}

/**
 * The seeds of several batches that may still germinate and that somebody may still count: not those of a batch that is
 * closed, nor of one that was watched up to the last look of a closed batch, with which it is compared no later.
 */
export function openSeeds(sides: readonly (readonly Course[])[]): readonly number[] {
  const ends = sides.flat().filter(course => isClosed(course) && !isFinished(course)).map(lastLook);
  const end = Math.min(...ends);
  return sides.map(side => side
    .filter(course => !isClosed(course) && !isFinished(course) && lastLook(course) < end)
    .reduce((sum, course) => sum + waiting(course), 0));
}

/**
 * The age up to which all of some batches were watched: the last look of the one that was watched for the shortest
 * time. A finished batch stays as it is, however early that was.
 */
export function commonAge(courses: readonly Course[]): number {
  const unfinished = courses.filter(course => !isFinished(course));
  return unfinished.length > 0 ? Math.min(...unfinished.map(lastLook)) : Math.max(...courses.map(lastLook));
}
