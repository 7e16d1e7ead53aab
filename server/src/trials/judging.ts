/** How a `judge` record binds a comparison: to the looks up to its day, and to those alone. */
import { GRACE_DAYS, judgeChoice, judgeDayOf, judgeRecordsOf, type Ignored, type JudgeRecord } from '../calendar/judge-days.ts';
import type { Course } from '../measures/course.ts';
import { isClosed, isFinished, lastLook } from '../measures/looks.ts';
import type { JudgeDay } from '../measures/verdict-text.ts';
import { isoOf, type Day } from '../model/day.ts';
import type { TrialBatch } from './groups.ts';

export interface Judging {
  readonly record: JudgeRecord;
  /** In words: '2026-05-01', or 'day 120 (2026-05-11)'. */
  readonly on: string;
  /** The day on which the record was written. */
  readonly written: Day;
  /**
   * `waiting`: not all batches have been looked at since the day came. `on the day`: all of them were looked at on the
   * day or within GRACE_DAYS after it, or were finished by then. `off the day`: some were not, or were closed before,
   * so that the end is one that somebody may have chosen.
   */
  readonly state: 'waiting' | 'on the day' | 'off the day';
}

export interface JudgedPair {
  readonly judging: Judging | undefined;
  readonly ignored: readonly Ignored[];
}

/** What the records say of batches that are compared. */
export function judgingOf(batches: readonly TrialBatch[]): JudgedPair {
  const records = judgeRecordsOf(batches.map(({ batch }) => batch));
  if (records.length === 0) return { judging: undefined, ignored: [] };
  const sides = batches.map(({ batch, course, conditions: { dayZero } }) => {
    const first = course.checks.find(({ germinated, rotted = 0 }) => germinated + rotted > 0);
    return { dayZero, found: first && dayZero + first.day, closed: batch.closed?.entry.moment.day };
  });
  const { holds, ignored } = judgeChoice(records, sides);
  if (!holds) return { judging: undefined, ignored };
  return {
    judging: {
      record: holds, on: onText(holds, batches), written: holds.entry.moment.day, state: stateOf(holds, batches),
    },
    ignored,
  };
}

/**
 * A course as it is judged: up to its first look on the day or within GRACE_DAYS after it. Where the day was missed no
 * look takes its place, so that all of them count, at the level for looks in between.
 */
export function judgedCourse({ course, conditions: { dayZero } }: TrialBatch, { record, state }: Judging): Course {
  if (state !== 'on the day') return course;
  const { cut, ...rest } = course;
  const checks = checksUpTo(course, ageOf(record, dayZero));
  const isWhole = checks.length === course.checks.length;
  return { ...rest, checks, closed: true, ...(isWhole && cut && { cut }) };
}

function ageOf(record: JudgeRecord, dayZero: Day): number {
  return judgeDayOf(record, dayZero)! - dayZero;
}

function checksUpTo({ checks }: Course, age: number): Course['checks'] {
  const next = checks.find(({ day }) => day >= age)?.day;
  const end = next !== undefined && next <= age + GRACE_DAYS ? next : age;
  return checks.filter(({ day }) => day <= end);
}

function stateOf(record: JudgeRecord, batches: readonly TrialBatch[]): Judging['state'] {
  const all = batches.map(({ course, conditions: { dayZero } }) => ({ course, age: ageOf(record, dayZero) }));
  const isPast = all.some(({ course, age }) => lastLook(course) > age + GRACE_DAYS);
  const isDone = all.every(({ course, age }) => isFinished(course) || isClosed(course) || lastLook(course) >= age);
  if (!isPast && !isDone) return 'waiting';
  return all.every(({ course, age }) => isSeen(course, age)) ? 'on the day' : 'off the day';
}

/** Looked at on the day or within GRACE_DAYS after it, or finished by then. */
function isSeen(course: Course, age: number): boolean {
  const checks = checksUpTo(course, age);
  if (checks.length === 0) return false;
  const isWhole = checks.length === course.checks.length;
  return checks.at(-1)!.day >= age || isFinished(isWhole ? course : { sown: course.sown, checks });
}

function onText(record: JudgeRecord, batches: readonly TrialBatch[]): string {
  const days = new Set(batches.map(({ conditions: { dayZero } }) => judgeDayOf(record, dayZero)!));
  const [day] = days;
  if ('date' in record.on) return isoOf(day!);
  return days.size === 1 ? `day ${record.on.age.value} (${isoOf(day!)})` : `day ${record.on.age.value}`;
}

/** In words. */
export function judgeDayTold({ on, written, state }: Judging): JudgeDay {
  return { on, written: isoOf(written), state };
}
