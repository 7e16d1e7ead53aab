/** From a batch of the journal to the course of counts that the measures work on. */
import { countsOf, type Batch, type CountEvent, type Totals } from '../journal/life.ts';
import type { Check, Course } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';

/**
 * The counts of a batch in days from day 0, with the seeds that they are of: those sown, or where nothing was sown
 * those that stayed in the batch. Undefined, with the reason, where one of the two is not known.
 */
export function courseOf(batch: Batch): Course | Undefined {
  const { origin, sowing, cut } = batch;
  const sown = sowing ? batch.sown : batch.kept;
  if (!origin) return undefinedBecause('there is no day 0: it was neither sown, nor lifted from a soak, nor chilled');
  if (sown === undefined) return undefinedBecause('the number of seeds is not written');
  const checks = countsOf(batch).map(({ entry, after }) => checkOf(entry.moment.day - origin.moment.day, after));
  return { sown, checks, ...(cut && { cut: cut.classes }) };
}

function checkOf(day: number, { germinated, emerged, leaf, leggy, abnormal, died, rotted, lost }: Totals): Check {
  return { day, germinated, emerged, leaf, leggy, abnormal, died, rotted, lost };
}

/** The course of a batch as it stood on a day, later counts and a later cut test left out. */
export function courseUntil(batch: Batch, day: number): Course | Undefined {
  const course = courseOf(batch);
  if (isUndefined(course) || !batch.origin) return course;
  const last = day - batch.origin.moment.day;
  const checks = course.checks.filter(check => check.day <= last);
  const cut = batch.cut && batch.cut.entry.moment.day <= day ? course.cut : undefined;
  return { sown: course.sown, checks, ...(cut && { cut }) };
}

/** The record of the last count that found something new germinated; undefined where none did. */
export function lastGermination(batch: Batch): CountEvent | undefined {
  return countsOf(batch).findLast(({ before, after }) => after.germinated > before.germinated);
}
