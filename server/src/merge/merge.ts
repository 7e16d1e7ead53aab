/**
 * Two versions of a journal file made one, by its records. A fact is a record with its date: each stands in the merged
 * file as often as the two sides together made it, and of the same day as before. What both sides changed, and a name
 * that both gave, is a conflict at that record alone.
 */
import { factsOf } from '../model/record.ts';
import { clashesOf } from './clash.ts';
import { MARKER_SIZE } from '../text/conflict-blocks.ts';
import { dated, type Part, type Passage } from './dates.ts';
import { baseItemsOf, itemsOf, newReader, type Item } from './items.ts';
import { sheetOf, writeRows, type Row } from './rows.ts';
import { settle, type ConflictReason, type Settled } from './settle.ts';
import { triosOf, type Trio } from './trios.ts';
import { woven } from './weave.ts';

export interface Labels {
  readonly ours: string;
  readonly theirs: string;
}

export interface MergeOptions {
  /** How many signs a mark has. */
  readonly markerSize?: number | undefined;
  readonly labels?: Labels;
  /** Both versions, one below the other, in place of a conflict; there are none then. */
  readonly keepBoth?: boolean;
}

export interface MergeConflict {
  /** Of its first mark in the merged text, from 0. */
  readonly line: number;
  readonly reason: ConflictReason;
  /** The record as it is in ours, else as it is in theirs. */
  readonly record: string;
}

export interface Merged {
  readonly text: string;
  readonly conflicts: readonly MergeConflict[];
  /** Records that both sides added, and that stand there once. */
  readonly once: readonly string[];
  /** Batches of which both sides wrote a count of what is new: each may have counted the same seedlings. */
  readonly countedTwice: readonly string[];
}

/** Merges what `ours` and `theirs` made of `base`. Any texts will do; a byte order mark is kept. */
export function merge(base: string, ours: string, theirs: string, options: MergeOptions = {}): Merged {
  const { markerSize = MARKER_SIZE, labels = { ours: 'ours', theirs: 'theirs' }, keepBoth = false } = options;
  const sheets = { base: sheetOf(base), ours: sheetOf(ours), theirs: sheetOf(theirs) };
  const read = newReader();
  const mine = itemsOf(sheets.ours.rows, read);
  const its = itemsOf(sheets.theirs.rows, read);
  const trios = triosOf(baseItemsOf(sheets.base.rows, read), mine, its);
  const order = woven(trios);
  const settled = new Map(order.map(trio => [trio, settle(trio)]));
  for (const clash of clashesOf(settled, mine, its)) {
    const [own, other] = [clash.ours.ours!, clash.theirs.theirs!];
    settled.set(clash.ours, { conflict: { reason: 'the same name on both sides', gap: own.gap, ours: own, theirs: other } });
    settled.set(clash.theirs, undefined);
  }
  const passages = dated(order.flatMap(trio => partsOf(settled.get(trio), keepBoth)));
  const rows: Row[] = [];
  const conflicts: MergeConflict[] = [];
  for (const passage of passages) {
    const { reason, item, gap } = passage;
    if (reason) conflicts.push({ line: rows.length + gap.length, reason, record: item.head!.text });
    for (const row of rowsOf(passage, markerSize, labels)) rows.push(row);
  }
  return {
    text: writeRows(rows, sheets.base, sheets.ours, sheets.theirs),
    conflicts,
    once: order.filter(isOnce).map(trio => trio.ours!.head!.text),
    countedTwice: countedTwice(order),
  };
}

function isOnce({ base, ours, theirs }: Trio): boolean {
  return !base && ours?.kind === 'record' && theirs !== undefined;
}

function partsOf(settled: Settled, keepBoth: boolean): Part[] {
  if (!settled) return [];
  if ('item' in settled || !keepBoth) return [settled];
  // Each by itself, so that each has a place where its own date holds.
  const { gap, ours, theirs } = settled.conflict;
  const kept = [ours, theirs].filter(item => item !== undefined);
  return kept.map((item, n) => ({ item: { ...item, gap: n === 0 ? gap : [] } }));
}

function rowsOf({ gap, lines, reason, theirs = [] }: Passage, size: number, labels: Labels): Row[] {
  if (!reason) return [...gap, ...lines];
  const mark = (sign: string, label = '') => ({ text: sign.repeat(size) + (label === '' ? '' : ` ${label}`), end: undefined });
  return [...gap, mark('<', labels.ours), ...lines, mark('='), ...theirs, mark('>', labels.theirs)];
}

function countedTwice(order: readonly Trio[]): string[] {
  const mine = new Set(order.filter(({ base, theirs }) => !base && !theirs).flatMap(({ ours }) => newlyCounted(ours!)));
  const its = new Set(order.filter(({ base, ours }) => !base && !ours).flatMap(({ theirs }) => newlyCounted(theirs!)));
  return [...mine].filter(batch => its.has(batch));
}

function newlyCounted({ reading }: Item): string[] {
  const record = reading?.record;
  if (record?.keyword !== 'count' || !record.subject) return [];
  return factsOf(record, 'count').some(({ total, n }) => !total && n.value > 0) ? [record.subject.text] : [];
}
