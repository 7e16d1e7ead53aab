/** Empty seed germinates under no treatment: where one side got more of it, that may be the difference. */
import { cutFaultOf, waiting, type Course } from '../measures/course.ts';
import type { Share } from '../measures/difference.ts';
import { fisher, reaches } from '../measures/fisher.ts';

/** Chance alone brings an imbalance as great to 1 lot in 20. Common practice, no source. */
const LEVEL = 0.05;

/** Points by which the difference is another one among full seed. Common practice, no source. */
const MATTERS = 0.1;

/**
 * Names empty seed as what differs, in words; undefined where the cut tests of both sides do not show it.
 *
 * @example
 * emptySeedText(treated, untreated) // 'empty seed (1 of 24 against 14 of 24)'
 */
export function emptySeedText(treated: readonly Course[], untreated: readonly Course[]): string | undefined {
  if (![...treated, ...untreated].every(isSorted)) return undefined;
  const [a, b] = [emptyOf(treated), emptyOf(untreated)];
  if (a.x === a.n || b.x === b.n || !reaches(fisher(a, b).twoSided, LEVEL)) return undefined;
  const [first, second] = [germinatedOf(treated), germinatedOf(untreated)];
  const ofSown = first / a.n - second / b.n;
  const ofFull = first / (a.n - a.x) - second / (b.n - b.x);
  return Math.abs(ofFull - ofSown) > MATTERS ? `empty seed (${a.x} of ${a.n} against ${b.x} of ${b.n})` : undefined;
}

/** Where no seed is left that had not germinated or rotted, there is none to cut open: it had none empty. */
function isSorted(course: Course): boolean {
  return course.cut ? !cutFaultOf(course) : waiting(course) === 0;
}

function emptyOf(courses: readonly Course[]): Share {
  return {
    x: courses.reduce((sum, { cut }) => sum + (cut?.empty ?? 0), 0),
    n: courses.reduce((sum, { sown, checks }) => sum + sown - (checks.at(-1)?.lost ?? 0), 0),
  };
}

function germinatedOf(courses: readonly Course[]): number {
  return courses.reduce((sum, { checks }) => sum + (checks.at(-1)?.germinated ?? 0), 0);
}
