/** A version of a file as items: each record with its remarks, each `day` line, each comment; with the blanks above. */
import { hasUnreadDate } from '../journal/journal-file.ts';
import { isoOf } from '../model/day.ts';
import { keywords } from '../model/keywords.ts';
import { parse, type Reading } from '../syntax/parse.ts';
import { conflictBlocks, type ConflictBlock } from '../text/conflict-blocks.ts';
import type { Row } from './rows.ts';

export type ItemKind = 'record' | 'day' | 'unread' | 'comment' | 'remark' | 'conflict' | 'end';

export interface Item {
  readonly kind: ItemKind;
  /** Blank lines above it. */
  readonly gap: readonly Row[];
  /** The record; undefined for the end of the file alone. */
  readonly head: Row | undefined;
  /** Its remarks, and what stands among them. */
  readonly tail: readonly Row[];
  readonly reading: Reading | undefined;
  /**
   * The date that the `day` line above gives, as ISO 8601; the line itself where its date cannot be read; '' where
   * there is none. Of a `day` line, and of a conflict that may hold one, what it gives to all below it.
   */
  readonly under: string;
  /** Whether a `day` line above says when it was. */
  readonly leans: boolean;
  /** Stood in a conflict of the version that both sides began with: neither side has it as it is here. */
  readonly open: boolean;
}

/** Reads a line; each text once for all versions of a file. */
export type Reader = (text: string) => Reading;

export function newReader(): Reader {
  const known = new Map<string, Reading>();
  return text => {
    let reading = known.get(text);
    if (!reading) known.set(text, reading = parse(text));
    return reading;
  };
}

/** The items of a version. A conflict in it is one item, so that nothing comes to stand inside it. */
export function itemsOf(rows: readonly Row[], read: Reader): Item[] {
  const blocks = new Map(conflictBlocks(rows.map(({ text }) => text)).map(block => [block.start, block]));
  return gathered(rows, read, n => blocks.get(n), () => false);
}

/** The items of the version that both sides began with. Of a conflict in it, which git makes too, its first part. */
export function baseItemsOf(rows: readonly Row[], read: Reader): Item[] {
  const blocks = conflictBlocks(rows.map(({ text }) => text));
  if (blocks.length === 0) return itemsOf(rows, read);
  const blockAt = new Map<number, ConflictBlock>();
  for (const block of blocks) for (let n = block.start; n <= block.end; n++) blockAt.set(n, block);
  const kept = rows.map((row, n) => ({ row, block: blockAt.get(n), n }))
    .filter(({ block, n }) => !block || (n > block.start && n < (block.base ?? block.middle)));
  return gathered(kept.map(({ row }) => row), read, () => undefined, n => kept[n]!.block !== undefined);
}

function gathered(
  rows: readonly Row[], read: Reader, blockAt: (n: number) => ConflictBlock | undefined, isOpen: (n: number) => boolean,
): Item[] {
  const items: Item[] = [];
  let under = '';
  let gap: Row[] = [];
  for (let n = 0; n < rows.length; n++) {
    const head = rows[n]!;
    const block = blockAt(n);
    if (block) {
      for (const { text } of rows.slice(n + 1, block.base ?? block.middle)) {
        if (read(text).record?.keyword === 'day') under = dayOf(text, read(text));
      }
      items.push({
        kind: 'conflict', gap, head, tail: rows.slice(n + 1, block.end + 1), reading: undefined, under, leans: false,
        open: false,
      });
      gap = [];
      n = block.end;
      continue;
    }
    const reading = read(head.text);
    if (reading.kind === 'blank') {
      gap.push(head);
      continue;
    }
    const kind = kindOf(reading);
    if (kind === 'day') under = dayOf(head.text, reading);
    const last = kind === 'comment' ? n : lastOfTail(rows, n, read, blockAt);
    const tail = rows.slice(n + 1, last + 1);
    items.push({ kind, gap, head, tail, reading, under, leans: leansOnDay(head.text, reading), open: isOpen(n) });
    gap = [];
    n = last;
  }
  items.push({ kind: 'end', gap, head: undefined, tail: [], reading: undefined, under, leans: false, open: false });
  return items;
}

function kindOf({ kind, record }: Reading): Exclude<ItemKind, 'conflict' | 'end'> {
  if (record?.keyword === 'day') return 'day';
  return kind === 'blank' ? 'remark' : kind;
}

function dayOf(text: string, { record }: Reading): string {
  return record?.date ? isoOf(record.date.day) : text;
}

/** Whether the `day` line above dates it, or will once a slip in it is corrected. */
function leansOnDay(text: string, reading: Reading): boolean {
  const { record, kind } = reading;
  if (!record) return kind === 'unread' && /^\p{L}/u.test(text);
  if (record.keyword === 'day' || keywords[record.keyword].dated === 'no' || record.date) return false;
  return !hasUnreadDate({ text, content: reading });
}

/** The last remark before the next record; blank lines and comments between two remarks go with them. */
function lastOfTail(
  rows: readonly Row[], from: number, read: Reader, blockAt: (n: number) => unknown,
): number {
  let last = from;
  for (let n = from + 1; n < rows.length && blockAt(n) === undefined; n++) {
    const { kind } = read(rows[n]!.text);
    if (kind === 'record' || kind === 'unread') break;
    if (kind === 'remark') last = n;
  }
  return last;
}
