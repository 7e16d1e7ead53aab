/** Places in the journal's files, in the editor's own terms. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Span } from '../model/record.ts';

/** A range within one line of a file. Lines count from 0, columns in UTF-16 units; `end` is exclusive. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export function placeOf(line: JournalLine, { start, end }: Span): Place {
  return { file: line.store.name, line: line.number, start, end };
}

/** By file, then from top to bottom. */
export function comparePlaces(a: Place, b: Place): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.start - b.start;
}
