/** Dates that are a year off: in January the year before is soon written. */
import { nearer } from '../../../checks/far-ahead.ts';
import type { Entry } from '../../../journal/life.ts';
import { addMonths, hasDate, isoOf, type Day } from '../../../model/day.ts';
import { lifeOf } from '../../events.ts';
import { replace, type Mend, type MendContext, type Mender } from './mend.ts';

/** The same day of the year before (-1) or after (1), where that lies within two days. For a date on its own line. */
function yearOff({ line, record: { date } }: Entry, by: -1 | 1, first: Day | undefined, last: Day): Mend[] {
  const day = date && addMonths(date.day, 12 * by);
  if (day === undefined || !hasDate(day) || first === undefined || day < first || day > last) return [];
  return [{ title: `Change to “${isoOf(day)}”: a year ${by < 0 ? 'before' : 'later'}`, edits: [replace(line, date!, isoOf(day))] }];
}

/** Dated more than a year from now: this year or the next. */
export const farAhead: Mender = ({ entry: { line, record: { date } } }, { now }) =>
  (date ? nearer(date.day, now.day) : []).map((day): Mend => ({ title: `Change to “${isoOf(day)}”`, edits: [replace(line, date!, isoOf(day))] }));

/** Counted before it was sown, or before anything was done to it. */
export const countBeforeSowing: Mender = ({ entry }, { journal, now }) => {
  const batch = lifeOf(journal, entry)?.batch;
  const begun = batch && [...batch.soaks, ...batch.stages].map(({ start }) => start.day);
  const first = batch?.sowing?.moment.day ?? (begun && begun.length > 0 ? Math.min(...begun) : undefined);
  return yearOff(entry, 1, first, now.day);
};

export const sownBeforeCollected: Mender = ({ entry }, { journal, now }) =>
  yearOff(entry, 1, lifeOf(journal, entry)?.lot.collected?.first, now.day);

export const drawBeforeMade: Mender = ({ entry, problem }, { journal, now }) => {
  const made = journal.solution(entry.line.text.slice(problem.start, problem.end))?.entry.moment;
  return yearOff(entry, 1, made?.day, now.day);
};

/** After the seed was thrown away or cut open: before that, and not before it was there. */
export const afterClose: Mender = ({ entry }, { journal }: MendContext) => {
  const { batch, event } = lifeOf(journal, entry) ?? {};
  const first = batch?.events[0]?.entry.moment.day;
  return event?.closedBy ? yearOff(entry, -1, first, event.closedBy.entry.moment.day - 1) : [];
};
