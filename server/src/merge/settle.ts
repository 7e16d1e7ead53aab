/** What is to become of one item: the version that only one side made, or a conflict. */
import { meantName, writtenName } from './identity.ts';
import type { Item } from './items.ts';
import type { Row } from './rows.ts';
import { changedRows, mergedTail, sameTexts } from './tails.ts';
import type { Trio } from './trios.ts';

/** Why both versions are shown. */
export type ConflictReason = 'changed on both sides' | 'deleted on one side and changed on the other' | 'the same name on both sides';

/** What both sides made of one item; undefined where a side has none any more. */
export interface Conflict {
  readonly reason: ConflictReason;
  readonly gap: readonly Row[];
  readonly ours: Item | undefined;
  readonly theirs: Item | undefined;
}

export type Settled = { readonly item: Item } | { readonly conflict: Conflict } | undefined;

/** Undefined: a side deleted it, and the other one left it as it was. */
export function settle(trio: Trio): Settled {
  const { base, ours, theirs } = trio;
  if (ours && theirs) return settleBoth(base, ours, theirs);
  const left = (ours ?? theirs)!;
  if (!base) return { item: left };
  if (base.kind === 'day' && !sameTexts(base.tail, left.tail)) return { item: left };
  if (base.kind === 'day' || base.kind === 'comment' || isUntouched(base, left)) return undefined;
  return { conflict: { reason: 'deleted on one side and changed on the other', gap: left.gap, ours, theirs } };
}

function isUntouched(base: Item, side: Item): boolean {
  return !base.open && isMeantAlike(base, side) && sameTexts(base.tail, side.tail);
}

function settleBoth(base: Item | undefined, ours: Item, theirs: Item): Settled {
  const gap = gapOf(base, ours, theirs);
  const head = headOf(base, ours, theirs);
  // A conflict around a `day` line would leave the date of what follows open.
  const tail = mergedTail(base?.tail ?? [], ours.tail, theirs.tail, ours.kind === 'day');
  if (head && tail) return { item: { ...head, gap, tail } };
  const [mine, its] = [head ?? ours, head ?? theirs];
  return {
    conflict: {
      reason: 'changed on both sides', gap,
      ours: { ...mine, gap: [], tail: tail ?? ours.tail }, theirs: { ...its, gap: [], tail: tail ?? theirs.tail },
    },
  };
}

function gapOf(base: Item | undefined, ours: Item, theirs: Item): readonly Row[] {
  return (base ? changedRows(base.gap, ours.gap, theirs.gap) : undefined) ?? ours.gap;
}

function isWrittenAlike(a: Item, b: Item): boolean {
  return a.head?.text === b.head?.text && a.head?.end === b.head?.end && (!a.leans || a.under === b.under);
}

function isMeantAlike(a: Item, b: Item): boolean {
  return writtenName(a) === writtenName(b) || meantName(a) === meantName(b);
}

/** The version whose record counts; undefined where both made another one of it. */
function headOf(base: Item | undefined, ours: Item, theirs: Item): Item | undefined {
  if (!base || base.open) return isMeantAlike(ours, theirs) ? ours : undefined;
  if (isWrittenAlike(base, ours)) return theirs;
  if (isWrittenAlike(base, theirs) || isMeantAlike(ours, theirs)) return ours;
  if (isMeantAlike(base, ours)) return theirs;
  return isMeantAlike(base, theirs) ? ours : undefined;
}
