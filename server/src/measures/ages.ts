import { isFinished, lastLook, lookAfter, lookBefore } from './looks.ts';
import type { Course } from './course.ts';

/** The ages, in days, at which one side can be held against another. */
export interface Ages {
  /** Ascending; each tells something that the others do not. */
  readonly all: readonly number[];
  /** One of them: the age at which the shares are compared. */
  readonly final: number;
  /** Days by which the looks at the final age lie apart. */
  readonly apart: number;
}

/**
 * The ages at which it can be said that the first side was ahead of the second, whatever happened between the looks. At
 * each of them the first side counts what its last look up to then had found, and the second what its next look found:
 * so the second side is given as many days more as the looks lie apart, and never the first.
 *
 * Among ages between the same two looks the latest one before a look of the second side counts. The final age is the
 * latest one for which the looks do not lie apart by more than it gains: the greatest age less the days apart. It hangs
 * on the days of the looks alone, not on what they found. Common practice, no source.
 *
 * Courses must be without fault. A batch of the first side that nobody had looked at by an age had nothing by then;
 * undefined where the second side was looked at no more.
 *
 * @example
 * // The first side is looked at on days 7 and 21, the second on days 14 and 28.
 * agesFor(first, second) // { all: [7, 21], final: 21, apart: 7 }
 */
export function agesFor(first: readonly Course[], second: readonly Course[]): Ages | undefined {
  const days = [...new Set([...first, ...second].flatMap(({ checks }) => checks.map(({ day }) => day)))]
    .sort((a, b) => a - b);
  const within = days.map(age => ({
    age,
    before: first.map(course => (isFinished(course) && lastLook(course) <= age ? age : lookBefore(course, age))),
    after: second.map(course => lookAfter(course, age)),
  })).filter(({ after }) => after.every(day => day !== undefined));
  const seen = within.filter(({ before }) => before.some(day => day !== undefined));
  const reached = seen.length > 0 ? seen : within;
  // Ages between the same looks of both sides are one.
  const different = reached.filter(({ before, after }, i) => !(
    i > 0 && isSame(before, reached[i - 1]!.before) && isSame(after, reached[i - 1]!.after)));
  // Later looks of the first side tell more where the second side has the same ones, and earlier ages tell more where
  // the first side has the same ones.
  const telling = different.filter(({ before, after }, i) => {
    const [earlier, later] = [different[i - 1], different[i + 1]];
    return !(later && isSame(after, later.after)) && !(earlier && isSame(before, earlier.before));
  });
  const all = telling.map(({ age }) => age);
  const aparts = all.map(age => apart(first, second, age));
  let best = -1;
  for (const [i, age] of all.entries()) if (best < 0 || age - aparts[i]! >= all[best]! - aparts[best]!) best = i;
  return best < 0 ? undefined : { all, final: all[best]!, apart: aparts[best]! };
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.every((day, i) => day === b[i]);
}

/** A finished batch needs no later look. A batch that nobody had looked at counts as looked at on day 0. */
function apart(first: readonly Course[], second: readonly Course[], age: number): number {
  const behind = first.map(course => (
    isFinished(course) && lastLook(course) <= age ? 0 : age - (lookBefore(course, age) ?? Math.min(0, age))));
  const beyond = second.map(course => Math.max(0, lookAfter(course, age)! - age));
  return Math.max(...behind) + Math.max(...beyond);
}
