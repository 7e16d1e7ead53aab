/** Where a new record goes in a file, and in what form, so that the diary stays in the order of its days. */
import type { Journal } from '../journal/journal.ts';
import type { JournalFile } from '../journal/journal-file.ts';
import { isoOf, type Day } from '../model/day.ts';
import type { Position } from '../text/line-store.ts';

export interface Insertion {
  readonly at: Position;
  readonly text: string;
  /** Where the cursor goes: behind the last line written. */
  readonly cursor: Position;
}

/**
 * Records of a day are put at the end of a file: below its last `day` line where that is of this day already, else
 * below a new one. A record that carries its own date stands there as well. The file's own line ends are kept.
 */
export function placeRecords(file: JournalFile, day: Day, lines: readonly string[]): Insertion {
  const { text } = file;
  const last = lastFilledLine(file);
  const end = text.at(0).end || '\n';
  const heading = file.lastDay() === day ? [] : ['', `day ${isoOf(day)}`];
  const at = last === undefined ? { line: 0, character: 0 } : { line: last, character: text.at(last).text.length };
  const added = last === undefined ? [...heading.slice(1), ...lines] : ['', ...heading, ...lines];
  // The text behind the last filled line stays; a file that ended without a line end gets one.
  const closing = last === text.lineCount - 1 || last === undefined ? end : '';
  const line = at.line + added.length - 1;
  return { at, text: added.join(end) + closing, cursor: { line, character: added.at(-1)?.length ?? 0 } };
}

/** The file in which today's records stand: one that ends with a `day` line of today, else the one given. */
export function diaryOf({ files }: Journal, today: Day, otherwise: string): JournalFile | undefined {
  return [...files.values()].find(file => file.lastDay() === today) ?? files.get(otherwise);
}

function lastFilledLine({ text }: JournalFile): number | undefined {
  for (let number = text.lineCount - 1; number >= 0; number--) {
    if (text.at(number).content.kind !== 'blank') return number;
  }
  return undefined;
}
