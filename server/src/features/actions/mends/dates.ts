/** Records without a date, or with one that cannot be. */
import type { Entry } from '../../../journal/life.ts';
import { addMonths, hasDate, isoOf, type Day } from '../../../model/day.ts';
import { lineEndAt } from '../below.ts';
import { writeDate } from '../own-date.ts';
import { insert, replace, type Mend, type MendContext, type Mender } from './mend.ts';

/** It is dated today, or as the record or the `day` above or below it. */
export const missingDate: Mender = ({ entry }, { journal, now }) => {
  const { line, record, moment } = entry;
  if (moment || !record.subject) return [];
  const beside = [nearestDay(entry, -1, journal), nearestDay(entry, 1, journal)];
  const days = new Map<Day, string>([[now.day, 'today']]);
  for (const [n, day] of beside.entries()) {
    if (day !== undefined && !days.has(day)) days.set(day, n === 0 ? 'as above' : 'as below');
  }
  const mends = [...days].map(([day, words]): Mend => ({
    title: `Date it ${isoOf(day)}: ${words}`, edits: [writeDate(line, record, day)],
  }));
  const end = lineEndAt(line);
  return [...mends, {
    title: `Write “day ${isoOf(now.day)}” above it`, edits: [insert(line, record.keywordSpan.start, `day ${isoOf(now.day)}${end}`)],
  }];
};

/** The date of the next record in a direction that has one. */
function nearestDay({ line: { store, number } }: Entry, step: 1 | -1, journal: MendContext['journal']): Day | undefined {
  for (let n = number + step; n >= 0 && n < store.lineCount; n += step) {
    const { record } = store.at(n).content;
    const day = record?.keyword === 'due' ? undefined : record?.date?.day ?? (record && journal.entryAt(store.at(n))?.moment?.day);
    if (day !== undefined) return day;
  }
  return undefined;
}

/** Days back within which a date of the year before can have been meant. */
const RECENT = 92;

/** A count of a day to come: in January the year before is soon written, and in December the next one. */
export const countInFuture: Mender = ({ entry: { line, record: { date } } }, { now }) => {
  if (!date || date.day <= now.day) return [];
  const before = addMonths(date.day, -12);
  const days = hasDate(before) && now.day - before >= 0 && now.day - before <= RECENT ? [before] : [];
  return days.map(day => ({ title: `Change to “${isoOf(day)}”: a year before`, edits: [replace(line, date, isoOf(day))] }));
};

const spoken: Readonly<Record<string, number>> = { today: 0, yesterday: -1, tomorrow: 1 };

/** A day by its name, as one would say it. */
export const spokenDate: Mender = ({ entry: { line }, problem }, { now }) => {
  const days = spoken[line.text.slice(problem.start, problem.end).toLowerCase()];
  if (days === undefined || !hasDate(now.day + days)) return [];
  const date = isoOf(now.day + days);
  return [{ title: `Change to “${date}”`, edits: [replace(line, problem, date)], evident: true }];
};
