/** The batches of a journal as they stand on a day; of each lot kept until the lot or the day changes. */
import { isHandling } from '../../calendar/soaks.ts';
import { isCounted } from '../../calendar/looks.ts';
import { isOpen, standingOf, type Standing } from '../../calendar/standing.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Lot } from '../../journal/life.ts';
import type { Day } from '../../model/day.ts';
import { lotMemo } from './lot-memo.ts';

export interface BatchNow {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly standing: Standing;
  readonly open: boolean;
  /** Whether there is anything in it to count. */
  readonly counted: boolean;
  readonly soaking: boolean;
  /** The day of its last record. */
  readonly last: Day;
  /** What it is found by, in small letters: its path and its plant. */
  readonly find: string;
  /** Its path, to be put in order: numbers by their size. */
  readonly key: string;
}

interface Batches {
  readonly open: readonly BatchNow[];
  readonly others: readonly BatchNow[];
}

const memo = lotMemo((lot, day): Batches => {
  const all = Array.from(lot.batches.values(), batch => batchNow(lot, batch, day));
  return { open: all.filter(({ open }) => open), others: all.filter(({ open }) => !open) };
});

/** Open batches, lots in no order. */
export function openBatches(journal: Journal, day: Day): BatchNow[] {
  return memo(journal, day).flatMap(({ open }) => open);
}

/** Batches of which nothing can come any more: closed, given out, dead. */
export function otherBatches(journal: Journal, day: Day): BatchNow[] {
  return memo(journal, day).flatMap(({ others }) => others);
}

function batchNow(lot: Lot, batch: Batch, day: Day): BatchNow {
  // To the day: what is dated today has happened.
  const standing = standingOf(batch, { day, minutes: undefined });
  const open = isOpen(standing);
  return {
    lot, batch, standing, open, counted: isCounted(standing),
    soaking: open && standing.past.findLast(isHandling)?.type === 'soak',
    last: batch.events.at(-1)?.entry.moment.day ?? batch.made.moment?.day ?? -Infinity,
    find: (lot.plant === undefined ? batch.path : `${batch.path} ${lot.plant}`).toLowerCase(),
    key: batch.path.replace(/\d+/g, digits => digits.padStart(9, '0')),
  };
}
