/**
 * The rows of a list of lots: where each stands, what came up, when it was begun, whether treating paid. Exact tests
 * take some milliseconds a lot, and a journal may hold thousands: whoever lists them has a few judged at a time.
 */
import { begunOn } from '../calendar/standing.ts';
import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { plantKey } from '../model/plant.ts';
import { winterOf } from '../model/winter.ts';
import { lotState, shareTexts, usedBatches, verdictTexts, type LotState } from '../words/lot-line.ts';
import { inOrderOf, numbered } from './gathered.ts';

export interface LotRow {
  readonly lot: Lot;
  /** The same for a plant however it is spelt; empty where none is named. */
  readonly plantKey: string;
  readonly state: LotState;
  readonly stateText: string;
  /** Of untreated seed first: 'untreated: 2 of 24 = 8.3 %'. */
  readonly shares: readonly string[];
  /** Undefined until it was judged. */
  readonly verdicts: readonly string[] | undefined;
  /** Those in which something was first done to seed of it, the latest first: '2025/26', in the south '2026'. */
  readonly winters: readonly string[];
}

/** What a day leaves as it is, as long as nothing is written of the lot. */
interface Kept {
  readonly sort: string;
  readonly row: Omit<LotRow, 'state' | 'stateText' | 'verdicts'>;
}

const kept = inOrderOf((id, journal, day): Kept[] => {
  const lot = journal.lot(id);
  return lot ? [keptOf(lot, day)] : [];
});

/** By plant, then by id; lots of no plant come last. Where they stand hangs on the hour: it is worked out each time. */
export function lotRows(journal: Journal, now: Moment): LotRow[] {
  return kept(journal, now.day).map(({ row }) => {
    const { state, text } = lotState(row.lot, now);
    return { ...row, state, stateText: text, verdicts: judged.get(row.lot) };
  });
}

const judged = new WeakMap<Lot, readonly string[]>();

/** The verdicts on a lot, kept for its row; none on one that is gone. */
export function judgeLot(journal: Journal, id: string, today: Day): readonly string[] {
  const lot = journal.lot(id);
  if (!lot) return [];
  const verdicts = verdictTexts(lot, today);
  judged.set(lot, verdicts);
  return verdicts;
}

function keptOf(lot: Lot, day: Day): Kept {
  const key = lot.plant === undefined ? '' : plantKey(lot.plant);
  return {
    sort: `${key || LAST} ${numbered(lot.id)}`,
    row: { lot, plantKey: key, shares: shareTexts(lot, day), winters: wintersOf(lot, day) },
  };
}

/** Sorts behind every name. */
const LAST = '\u{10FFFF}';

function wintersOf(lot: Lot, day: Day): string[] {
  const winters = usedBatches(lot).flatMap(batch => {
    const begun = begunOn(batch, { day, minutes: undefined });
    return begun === undefined ? [] : [winterOf(begun, lot.zone)];
  });
  return [...new Set(winters)].sort().reverse();
}
