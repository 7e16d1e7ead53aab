/** Records with dates of their own put below `day` lines. */
import type { Journal } from '../../journal/journal.ts';
import { isDayLine, type JournalFile, type JournalLine } from '../../journal/journal-file.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { keywords } from '../../model/keywords.ts';
import { placeOf } from '../place.ts';
import { oneALine, type Action, type ActionEdit } from './action.ts';
import { lineEndAt } from './below.ts';
import { takeDate } from './own-date.ts';

/**
 * The records on the lines from one to another, both included, lose their dates to `day` lines above them, one for
 * each run of a date; no record comes to be of another day. Undefined where none has a date of its own, where a line
 * cannot be read in full, and where a record that has no date at all would get one.
 */
export function dayLinesAction(journal: Journal, name: string, from: number, to: number): Action | undefined {
  const file = journal.files.get(name);
  if (!file) return undefined;
  const last = Math.min(to, file.text.lineCount - 1);
  const edits: ActionEdit[] = [];
  const moved: Day[] = [];
  let day = file.dayAbove(from);
  const put = (line: JournalLine, next: Day) => {
    if (next !== day) edits.push(dayLine(line, next));
    day = next;
  };
  /** A line without a date of its own goes on to be of the day it is of; not possible where it is of none. */
  const keep = (line: JournalLine): boolean => {
    const own = file.dayAbove(line.number);
    if (own !== undefined) put(line, own);
    return own === day;
  };
  for (let number = from; number <= last; number++) {
    const line = file.text.at(number);
    const { record, problems } = line.content;
    if (problems.length > 0) return undefined;
    if (isDayLine(line)) day = record!.date!.day;
    // A reminder carries its date itself.
    if (!record || !isDated(line) || record.keyword === 'due') continue;
    if (!record.date) {
      if (!keep(line)) return undefined;
      continue;
    }
    put(line, record.date.day);
    moved.push(record.date.day);
    edits.push(takeDate(line, record.date));
  }
  const next = firstUndated(file, last + 1);
  if (moved.length === 0 || (next && !keep(next))) return undefined;
  return { title: titleOf(moved), edits: oneALine(edits, journal) };
}

function titleOf(moved: readonly Day[]): string {
  const records = moved.length === 1 ? 'this record' : `these ${moved.length} records`;
  const days = new Set(moved);
  return `Move ${records} below ${days.size === 1 ? `“day ${isoOf(moved[0]!)}”` : `“day” lines, ${days.size} days`}`;
}

function isDated({ content: { record } }: JournalLine): boolean {
  return record !== undefined && keywords[record.keyword].dated !== 'no';
}

/** The first line below that a new `day` line would date; one that cannot be read may be a record too. */
function firstUndated(file: JournalFile, from: number): JournalLine | undefined {
  for (const line of file.linesToNextDay(from)) {
    const { record, kind } = line.content;
    if (kind === 'unread' || (isDated(line) && !record!.date)) return line;
  }
  return undefined;
}

/** Set off by a blank line, unless a comment stands above it. */
function dayLine(line: JournalLine, day: Day): ActionEdit {
  const { number, store, content: { record } } = line;
  const end = lineEndAt(line);
  const above = number === 0 ? undefined : store.at(number - 1).content.kind;
  const gap = above === 'record' || above === 'remark' || above === 'unread' ? end : '';
  const start = record?.keywordSpan.start ?? 0;
  return { ...placeOf(line, { start, end: start }), text: `${gap}day ${isoOf(day)}${end}` };
}
