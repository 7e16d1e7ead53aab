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
  const lines = text.lines();
  const headings = headingsOf(lines);
  const folds: Fold[] = [];
  const add = (start: number, end: number, kind: Fold['kind']) => {
    if (end > start) folds.push({ start, end, kind });
  };
  for (const { line, end } of headings) add(line, end, 'heading');
  const stops = new Set(headings.map(({ line }) => line));
  let day: number | undefined;
  let record: number | undefined;
  let filled = 0;
  const endRecord = () => {
    if (record !== undefined) add(record, filled, 'remarks');
    record = undefined;
  };
  const endDay = () => {
    if (day !== undefined) add(day, filled, 'day');
    day = undefined;
  };
  for (let number = 0; number < lines.length; number++) {
    const line = lines[number]!;
    const { kind } = line.content;
    const isDay = isDayLine(line);
    if (kind !== 'remark') endRecord();
    if (isDay || stops.has(number)) endDay();
    if (isDay) day = number;
    else if (kind === 'record' || kind === 'unread') record = number;
    if (kind !== 'blank') filled = number;
  }
  endRecord();
  endDay();
  return folds.sort((a, b) => a.start - b.start || b.end - a.end);
}
