/**
 * The formatter. It touches only records that could be read in full; comments, remarks and lines with a mistake stay
 * as they are, and so does everything that the grower named or wrote freely; the order of facts changes only if asked.
 */
import type { JournalText } from '../journal/journal-file.ts';
import type { Reading } from '../syntax/parse.ts';
import { print, type FactOrder } from '../syntax/print.ts';

/** A change within one line. Lines count from 0, columns in UTF-16 units; `end` is exclusive. */
export interface LineEdit {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Which lines, by default all, and in which order their facts are to stand. */
export interface FormatRequest {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  readonly order?: FactOrder;
}

/** The edits that format the lines from one to another: one a line at most, no wider than needed. */
export function formatEdits(text: JournalText, { from = 0, to = Infinity, order }: FormatRequest = {}): LineEdit[] {
  const edits: LineEdit[] = [];
  for (let line = Math.max(0, from); line <= Math.min(to, text.lineCount - 1); line++) {
    const { text: written, content } = text.at(line);
    const change = difference(written, formatLine(written, content, order));
    if (change) edits.push({ line, ...change });
  }
  return edits;
}

/** A line as the formatter writes it. */
export function formatLine(line: string, { record, problems }: Reading, order?: FactOrder): string {
  return record && problems.length === 0 ? print(line, record, order) : line;
}

function difference(before: string, after: string): Omit<LineEdit, 'line'> | undefined {
  if (before === after) return undefined;
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  let behind = 0;
  while (behind < shorter - start && before[before.length - 1 - behind] === after[after.length - 1 - behind]) behind++;
  return { start, end: before.length - behind, text: after.slice(start, after.length - behind) };
}
