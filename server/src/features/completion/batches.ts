/** The batches of a journal as they stand on a day. */
import { isLeftOff } from '../../calendar/left-off.ts';
import { lastSoak } from '../../calendar/soaks.ts';
import { isCounted } from '../../calendar/looks.ts';
import { isOpen, standingOf, type Standing } from '../../calendar/standing.ts';
import { isForgotten } from '../../journal/soaking.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Lot } from '../../journal/life.ts';
import { LAST_DAY, type Day } from '../../model/day.ts';
import { inOrderOf, lotMemo, numbered } from '../gathered.ts';

export interface BatchNow {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly standing: Standing;
  readonly open: boolean;
  /** Whether there is anything in it to count, and it was not left off. */
  readonly counted: boolean;
  readonly soaking: boolean;
  /** What it is found by, in small letters: its path and its plant. */
  readonly find: string;
  /** To be put in order: the day of its last record, the latest first, then its path, numbers by their size. */
  readonly sort: string;
}

const all = lotMemo((lot, day) => Array.from(lot.batches.values(), batch => batchNow(lot, batch, day)));

function batchesBy(isWanted: (batch: BatchNow) => boolean): (journal: Journal, day: Day) => readonly BatchNow[] {
  return inOrderOf((id, journal, day) => {
    const lot = journal.lot(id);
    return lot ? all(lot, day).filter(isWanted) : [];
  });
}

/** Open batches, those that were written about last at the top. */
export const openBatches = batchesBy(({ open }) => open);

/** Batches of which nothing can come any more: closed, given out, dead. In the same order. */
export const otherBatches = batchesBy(({ open }) => !open);

function batchNow(lot: Lot, batch: Batch, day: Day): BatchNow {
  // To the day: what is dated today has happened.
  const now = { day, minutes: undefined };
  const standing = standingOf(batch, now);
  const open = isOpen(standing);
  return {
    lot, batch, standing, open, counted: isCounted(standing) && !isLeftOff(standing, now),
    soaking: open && isSoaking(standing, day),
    find: (lot.plant === undefined ? batch.path : `${batch.path} ${lot.plant}`).toLowerCase(),
    sort: sortKey(batch),
  };
}

/** One that lies far back is over, though nobody wrote it. */
function isSoaking({ past, batch: { soaks } }: Standing, day: Day): boolean {
  const soak = soaks.length > 0 ? lastSoak(past) : undefined;
  return soak !== undefined && !isForgotten(soak, { day, minutes: undefined });
}

function sortKey({ events, made, path }: Batch): string {
  const last = events.at(-1)?.entry.moment.day ?? made.moment?.day ?? -LAST_DAY;
  return `${String(LAST_DAY - last).padStart(9, '0')} ${numbered(path)}`;
}
