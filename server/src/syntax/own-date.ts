/** The date of a record written on its own line. */
import { isoOf, type Day } from '../model/day.ts';
import type { JournalRecord } from '../model/record.ts';

/** Where a record that has no date of its own takes one, and how it is written there. */
export function ownDate(line: string, record: JournalRecord, day: Day): { readonly at: number; readonly text: string } {
  const { time, plant, subject, keywordSpan } = record;
  // Before the time of day, else behind the subject and the plant's name.
  if (time) return { at: time.start, text: `${isoOf(day)} ` };
  const named = plant ?? subject ?? keywordSpan;
  // Of a quoted name the closing mark is no part.
  const at = line.charAt(named.end) === '"' ? named.end + 1 : named.end;
  return { at, text: ` ${isoOf(day)}` };
}
