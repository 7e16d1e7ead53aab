/** What is new on both sides in one place, put in the order of time; neither side's own order changes. */
import { isoOf } from '../model/day.ts';
import type { Item } from './items.ts';
import type { Trio } from './trios.ts';

export type Direction = 'oldest first' | 'newest first';

/** Items that stay together: a record with the comments above it, or a `day` line with all below it. */
interface Chunk {
  readonly trios: Trio[];
  /** ISO 8601; undefined where it says nothing of time. */
  readonly day: string | undefined;
  readonly minutes: number;
  /** It needs the `day` line that stands above the run. */
  readonly isPinned: boolean;
}

/** `next` is the item below the run: a comment right above it stays there. */
export function byTime(
  ours: readonly Trio[], theirs: readonly Trio[], next: Item | undefined,
  itemOf: (trio: Trio) => Item, direction: Direction,
): Trio[] {
  if (ours.length === 0) return [...theirs];
  if (theirs.length === 0) return [...ours];
  const [mine, its] = [chunksOf(ours, next, itemOf), chunksOf(theirs, next, itemOf)];
  const merged: Trio[] = [];
  let [m, i] = [0, 0];
  while (m < mine.chunks.length || i < its.chunks.length) {
    const [a, b] = [mine.chunks[m], its.chunks[i]];
    const takesOurs = !b || (a !== undefined && isFirst(a, b, direction));
    merged.push(...(takesOurs ? mine.chunks[m++]! : its.chunks[i++]!).trios);
  }
  return [...merged, ...mine.last, ...its.last];
}

function isFirst(a: Chunk, b: Chunk, direction: Direction): boolean {
  if (a.isPinned !== b.isPinned) return a.isPinned;
  if (a.day === undefined || b.day === undefined) return a.day === undefined || b.day !== undefined;
  if (a.day !== b.day) return (a.day < b.day) === (direction === 'oldest first');
  return a.minutes <= b.minutes;
}

function chunksOf(
  run: readonly Trio[], next: Item | undefined, itemOf: (trio: Trio) => Item,
): { chunks: Chunk[]; last: Trio[] } {
  const chunks: Chunk[] = [];
  let above: Trio[] = [];
  let underOwnDay = false;
  let time: Pick<Chunk, 'day' | 'minutes'> = { day: undefined, minutes: 0 };
  for (const [n, trio] of run.entries()) {
    const item = itemOf(trio);
    const below = n + 1 < run.length ? itemOf(run[n + 1]!) : next;
    if (item.kind === 'comment' && below?.gap.length === 0 && below.kind !== 'end') {
      above.push(trio);
      continue;
    }
    const own = timeOf(item, time);
    const goesOn = (underOwnDay && item.kind !== 'day') || (item.kind === 'comment' && chunks.length > 0);
    if (goesOn) chunks.at(-1)!.trios.push(...above, trio);
    else {
      const isPinned = item.kind !== 'day' && (item.leans || own.day === undefined);
      chunks.push({ trios: [...above, trio], ...own, isPinned });
    }
    underOwnDay ||= item.kind === 'day';
    time = own;
    above = [];
  }
  // What stands above a chunk that needs the line above the run has to come before it.
  const pinned = chunks.findLastIndex(({ isPinned }) => isPinned);
  return { chunks: chunks.map((chunk, n) => (n < pinned ? { ...chunk, isPinned: true } : chunk)), last: above };
}

/** A record without a time of day follows the one before it; what says nothing of time stays where it is. */
function timeOf({ kind, reading, leans, under }: Item, before: Pick<Chunk, 'day' | 'minutes'>): Pick<Chunk, 'day' | 'minutes'> {
  const record = reading?.record;
  const written = record?.date && kind !== 'day' ? isoOf(record.date.day) : leans || kind === 'day' ? under : undefined;
  const day = written !== undefined && /^\d/.test(written) ? written : before.day;
  return { day, minutes: record?.time?.minutes ?? (day === before.day ? before.minutes : 0) };
}
