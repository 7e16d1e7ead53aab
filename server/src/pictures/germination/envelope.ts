/** What is known of one or several batches at each look, and within which limits the seed came up between two looks. */
import { dayFaultOf, finalTotal, seedsCounted, type Course } from '../../measures/course.ts';
import { undefinedBecause, type Undefined } from '../../measures/measured.ts';

/** Seeds on a day, counted from day 0. */
export interface Look {
  readonly day: number;
  /** Seen to have germinated by the end of this day. */
  readonly known: number;
  /** May have germinated by then: the next look at each batch found as many. */
  readonly possible: number;
  /** At least one of the batches was looked at; day 0, where seed may begin, is no look. */
  readonly isLook: boolean;
}

export interface Envelope {
  /** Seeds that the shares are of: sown less lost. */
  readonly seeds: number;
  readonly looks: readonly Look[];
  /** Seeds at the end. */
  readonly germinated: number;
  /** The days between which half of what germinated was up. */
  readonly half: { readonly from: number; readonly to: number; readonly seeds: number } | Undefined;
}

/**
 * The replicates of one treatment together. Undefined, with the reason, where one of them has no days to draw.
 *
 * @example
 * envelopeOf([{ sown: 10, checks: [{ day: 7, germinated: 0 }, { day: 14, germinated: 6 }] }])
 * // looks: day 0 (0 known, 0 possible), day 7 (0 known, 0 possible), day 14 (6 known, 6 possible); between day 7 and
 * // day 14 from 0 to 6 were up. half: from day 7 to day 14
 */
export function envelopeOf(courses: readonly Course[]): Envelope | Undefined {
  if (courses.length === 0) return undefinedBecause('there is no batch');
  const fault = courses.map(dayFaultOf).find(found => found !== undefined);
  if (fault) return fault;
  const seen = new Set(courses.flatMap(({ checks }) => checks.map(({ day }) => day)));
  const first = Math.min(...seen);
  const days = [...(first > 0 ? [0] : []), ...[...seen].sort((a, b) => a - b)];
  const looks = days.map((day): Look => ({
    day, isLook: seen.has(day),
    known: sum(courses, ({ checks }) => checks.findLast(check => check.day <= day)?.germinated ?? 0),
    possible: sum(courses, course => possibleBy(course, day)),
  }));
  const germinated = sum(courses, course => finalTotal(course, 'germinated'));
  return { seeds: sum(courses, seedsCounted), looks, germinated, half: halfOf(looks, germinated) };
}

/** Seed that is found on a day may have come up on any day after the look before. */
function possibleBy({ checks }: Course, day: number): number {
  if (day <= 0 && checks[0]!.day > 0) return 0;
  const next = checks.findIndex(check => check.day >= day);
  if (next < 0) return checks.at(-1)!.germinated;
  const onDay = checks.findLast(check => check.day === checks[next]!.day);
  return onDay!.germinated;
}

/**
 * The looks between which seed number (G + 1) / 2 came up, as T50 after Coolbear counts; that is exact for several
 * batches too, however differently they were looked at.
 */
function halfOf(looks: readonly Look[], germinated: number): Envelope['half'] {
  if (germinated === 0) return undefinedBecause('nothing germinated');
  const seeds = (germinated + 1) / 2;
  const before = looks[looks.findIndex(({ possible }) => possible >= seeds) - 1];
  return before
    ? { from: before.day, to: looks.find(({ known }) => known >= seeds)!.day, seeds }
    : undefinedBecause('it was reached before the first look');
}

function sum(courses: readonly Course[], of: (course: Course) => number): number {
  return courses.reduce((total, course) => total + of(course), 0);
}
