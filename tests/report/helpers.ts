import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { reportOf, type Report, type ReportOptions } from '../../server/src/report/report.ts';
import { readFixture } from '../support/fixture.ts';

/** Example: at('2026-01-20', 8, 30) */
export function at(iso: string, hours?: number, minutes = 0): Moment {
  return { day: dayOfIso(iso)!, minutes: hours === undefined ? undefined : hours * 60 + minutes };
}

/** The report of a journal written as a fixture. */
export function reportFor(source: string, now: Moment, options: Omit<ReportOptions, 'now'> = {}): Report {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  const book = new ProblemBook(journal);
  book.update(now);
  return reportOf(journal, book, { now, ...options });
}
