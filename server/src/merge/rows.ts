/** The lines of one version of a file, apart from what holds for the file as a whole. */
import { splitLines, type LineEnd } from '../text/split-lines.ts';

/** A line. `end` is given only where it is not the usual end of its version. */
export interface Row {
  readonly text: string;
  readonly end: LineEnd | undefined;
}

export interface Sheet {
  readonly rows: readonly Row[];
  /** The end that most of its lines have; undefined where none has any. */
  readonly usualEnd: LineEnd | undefined;
  readonly hasMark: boolean;
  /** Whether the last line has an end; undefined where there is no line. */
  readonly isEnded: boolean | undefined;
}

const MARK = '\uFEFF';

export function sheetOf(written: string): Sheet {
  const hasMark = written.startsWith(MARK);
  const lines = splitLines(hasMark ? written.slice(1) : written);
  const isEnded = lines.at(-1)!.text === '';
  if (isEnded) lines.pop();
  const usualEnd = usualEndOf(lines.map(({ end }) => end));
  const rows = lines.map(({ text, end }) => ({ text, end: end === usualEnd || end === '' ? undefined : end }));
  return { rows, usualEnd, hasMark, isEnded: rows.length > 0 ? isEnded : undefined };
}

function usualEndOf(ends: readonly LineEnd[]): LineEnd | undefined {
  const counts = new Map<LineEnd, number>();
  for (const end of ends) if (end !== '') counts.set(end, (counts.get(end) ?? 0) + 1);
  let usual: LineEnd | undefined;
  for (const [end, n] of counts) if (usual === undefined || n > counts.get(usual)!) usual = end;
  return usual;
}

/** What one side made of a value counts where the other one left it; where both changed it, ours does. */
function threeWay<Value>(base: Value, ours: Value, theirs: Value): Value {
  return ours === base ? theirs : ours;
}

/** The text of merged rows; what holds for the file as a whole is merged too. */
export function writeRows(rows: readonly Row[], base: Sheet, ours: Sheet, theirs: Sheet): string {
  const usual = threeWay(base.usualEnd, ours.usualEnd ?? base.usualEnd, theirs.usualEnd ?? base.usualEnd) ?? '\n';
  const mark = threeWay(base.hasMark, ours.hasMark, theirs.hasMark) ? MARK : '';
  const known = base.isEnded ?? ours.isEnded ?? theirs.isEnded ?? true;
  const isEnded = threeWay(known, ours.isEnded ?? known, theirs.isEnded ?? known);
  const last = rows.length - 1;
  return mark + rows.map(({ text, end }, n) => text + (n === last && !isEnded ? '' : end ?? usual)).join('');
}
