/** The date of a record written on its own line, or taken off it. */
import type { JournalLine } from '../../journal/journal-file.ts';
import { isoOf, type Day } from '../../model/day.ts';
import type { JournalRecord, Span } from '../../model/record.ts';
import { placeOf } from '../place.ts';
import type { ActionEdit } from './action.ts';

/** Before the time of day, else behind the subject and the plant's name. For a record that has no date of its own. */
export function writeDate(line: JournalLine, record: JournalRecord, day: Day): ActionEdit {
  const { time, plant, subject, keywordSpan } = record;
  if (time) return { ...placeOf(line, { start: time.start, end: time.start }), text: `${isoOf(day)} ` };
  const named = plant ?? subject ?? keywordSpan;
  // Of a quoted name the closing mark is no part.
  const end = line.text.charAt(named.end) === '"' ? named.end + 1 : named.end;
  return { ...placeOf(line, { start: end, end }), text: ` ${isoOf(day)}` };
}

/** Out of its line, with the blanks before it. */
export function takeDate(line: JournalLine, date: Span): ActionEdit {
  const start = line.text.slice(0, date.start).trimEnd().length;
  return { ...placeOf(line, { start, end: date.end }), text: '' };
}
