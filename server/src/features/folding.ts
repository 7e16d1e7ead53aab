/** What can be folded: headings with what follows, `day` lines with the records below, records with their remarks. */
import { isDayLine, type JournalText } from '../journal/journal-file.ts';
import { headingsOf } from './headings.ts';

export interface Fold {
  /** The line that stays to be seen; lines count from 0. */
  readonly start: number;
  /** The last line that is folded away. */
  readonly end: number;
  readonly kind: 'heading' | 'day' | 'remarks';
}

/** From top to bottom; of two that begin on one line the longer first. Empty lines at the end of a fold stay. */
export function foldsOf(text: JournalText): Fold[] {
  const lines = [...text];
  const lastFilled = filledUpTo(lines.map(({ content }) => content.kind !== 'blank'));
  const folds: Fold[] = [];
  const add = (start: number, end: number, kind: Fold['kind']) => {
    const last = lastFilled[end] ?? start;
    if (last > start) folds.push({ start, end: last, kind });
  };
  const headings = headingsOf(lines);
  for (const { line, end } of headings) add(line, end, 'heading');
  const stops = new Set(headings.map(({ line }) => line));
  let day: number | undefined;
  let record: number | undefined;
  lines.forEach((line, number) => {
    const { kind } = line.content;
    if (record !== undefined && kind !== 'remark') {
      add(record, number - 1, 'remarks');
      record = undefined;
    }
    if (day !== undefined && (stops.has(number) || isDayLine(line))) {
      add(day, number - 1, 'day');
      day = undefined;
    }
    if (isDayLine(line)) day = number;
    else if (kind === 'record' || kind === 'unread') record = number;
  });
  if (record !== undefined) add(record, lines.length - 1, 'remarks');
  if (day !== undefined) add(day, lines.length - 1, 'day');
  return folds.sort((a, b) => a.start - b.start || b.end - a.end);
}

/** For each line the last filled one at or above it. */
function filledUpTo(filled: readonly boolean[]): number[] {
  let last = 0;
  return filled.map((isFilled, number) => (last = isFilled ? number : last));
}
