/** The remarks of a record, merged line by line. */
import type { Row } from './rows.ts';

function sameRows(a: readonly Row[], b: readonly Row[]): boolean {
  return a.length === b.length && a.every(({ text, end }, n) => text === b[n]!.text && end === b[n]!.end);
}

/** Whether rows say the same, whatever ends their lines. */
export function sameTexts(a: readonly Row[], b: readonly Row[]): boolean {
  return a.length === b.length && a.every(({ text }, n) => text === b[n]!.text);
}

/** Rows of which at most one side made something else; undefined where both did. */
export function changedRows(
  base: readonly Row[], ours: readonly Row[], theirs: readonly Row[],
): readonly Row[] | undefined {
  if (sameRows(ours, base)) return theirs;
  if (sameRows(theirs, base) || sameTexts(ours, theirs)) return ours;
  if (sameTexts(ours, base)) return theirs;
  return sameTexts(theirs, base) ? ours : undefined;
}

/**
 * What both sides added is kept, ours first, and the same line once. Where both changed the same lines: undefined, or
 * with `keepBoth` the lines of both.
 */
export function mergedTail(
  base: readonly Row[], ours: readonly Row[], theirs: readonly Row[], keepBoth: boolean,
): readonly Row[] | undefined {
  const whole = changedRows(base, ours, theirs);
  if (whole) return whole;
  const inOurs = partnersOf(base, ours);
  const inTheirs = partnersOf(base, theirs);
  const merged: Row[] = [];
  let from = { base: 0, ours: 0, theirs: 0 };
  for (let n = 0; n <= base.length; n++) {
    const [o, t] = n < base.length ? [inOurs[n], inTheirs[n]] : [ours.length, theirs.length];
    if (o === undefined || t === undefined) continue;
    const [b, mine, its] = [base.slice(from.base, n), ours.slice(from.ours, o), theirs.slice(from.theirs, t)];
    const piece = changedRows(b, mine, its) ?? (b.length === 0 || keepBoth ? union(mine, its) : undefined);
    if (!piece) return undefined;
    merged.push(...piece);
    if (n < base.length) merged.push(ours[o]!.end === base[n]!.end ? theirs[t]! : ours[o]!);
    from = { base: n + 1, ours: o + 1, theirs: t + 1 };
  }
  return merged;
}

function union(ours: readonly Row[], theirs: readonly Row[]): Row[] {
  const own = new Set(ours.map(({ text }) => text));
  return [...ours, ...theirs.filter(({ text }) => text.trim() === '' || !own.has(text))];
}

/** Remarks longer than this are compared from both ends alone: the table below grows with the square. */
const LONGEST = 500;

/** Of each row the number of its partner in a longest common row of rows. */
function partnersOf(base: readonly Row[], side: readonly Row[]): (number | undefined)[] {
  const partners: (number | undefined)[] = base.map(() => undefined);
  let start = 0;
  const shorter = Math.min(base.length, side.length);
  while (start < shorter && base[start]!.text === side[start]!.text) partners[start] = start++;
  let end = 0;
  while (end < shorter - start && base[base.length - 1 - end]!.text === side[side.length - 1 - end]!.text) {
    partners[base.length - 1 - end] = side.length - 1 - end;
    end++;
  }
  const [rows, columns] = [base.length - start - end, side.length - start - end];
  if (rows > LONGEST || columns > LONGEST) return partners;
  const lengths = Array.from({ length: rows + 1 }, () => new Array<number>(columns + 1).fill(0));
  for (let r = rows - 1; r >= 0; r--) {
    for (let c = columns - 1; c >= 0; c--) {
      lengths[r]![c] = base[start + r]!.text === side[start + c]!.text
        ? lengths[r + 1]![c + 1]! + 1 : Math.max(lengths[r + 1]![c]!, lengths[r]![c + 1]!);
    }
  }
  for (let r = 0, c = 0; r < rows && c < columns;) {
    if (base[start + r]!.text === side[start + c]!.text) partners[start + r++] = start + c++;
    else if (lengths[r + 1]![c]! >= lengths[r]![c + 1]!) r++;
    else c++;
  }
  return partners;
}
