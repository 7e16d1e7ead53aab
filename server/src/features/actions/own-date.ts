/** The date of a record written on its own line, or taken off it. */
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Day } from '../../model/day.ts';
import type { JournalRecord, Span } from '../../model/record.ts';
import { ownDate } from '../../syntax/own-date.ts';
import { placeOf } from '../place.ts';
import type { ActionEdit } from './action.ts';

/** For a record that has no date of its own. */
export function writeDate(line: JournalLine, record: JournalRecord, day: Day): ActionEdit {
  const { at, text } = ownDate(line.text, record, day);
  return { ...placeOf(line, { start: at, end: at }), text };
}

/** Out of its line, with the blanks before it. */
export function takeDate(line: JournalLine, date: Span): ActionEdit {
  const start = line.text.slice(0, date.start).trimEnd().length;
  return { ...placeOf(line, { start, end: date.end }), text: '' };
}
