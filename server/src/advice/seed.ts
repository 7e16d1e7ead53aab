/** What is there to decide about: seed of a lot that nothing was done to, how much of it, and how old it is. */
import type { Batch, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { rangeOf } from '../journal/estimates.ts';
import type { SeedRange } from '../model/estimate.ts';
import type { Day } from '../model/day.ts';
import { meaningOf } from '../model/events.ts';
import type { DaySpan } from '../model/record.ts';
import { standingOf } from '../calendar/standing.ts';

export interface Untouched {
  /** Batches with seed, in the order of the journal; the lot itself where it was never divided. */
  readonly batches: readonly Batch[];
  /** Undefined where nobody knows how many they are. */
  readonly seeds: SeedRange | undefined;
  /** Something was done to other seed of the lot. */
  readonly isRest: boolean;
}

/** Undefined where all the seed of the lot was begun with, or is gone. */
export function untouchedIn(lot: Lot, now: Moment): Untouched | undefined {
  const all = [...lot.batches.values()];
  const batches = all.filter(batch => isUntouched(batch, now));
  if (batches.length === 0) return undefined;
  const isRest = all.some(batch => batch.events.some(isBegin));
  const known = batches.flatMap(batch => rangeOf(batch, 'kept') ?? []);
  const seeds = known.length === batches.length
    ? { least: sum(known.map(({ least }) => least)), most: sum(known.map(({ most }) => most)) } : undefined;
  return { batches, seeds, isRest };
}

function isUntouched(batch: Batch, now: Moment): boolean {
  const { closed, givenOut } = standingOf(batch, now);
  if (closed || givenOut || batch.unread) return false;
  if ([...batch.inherited, ...batch.events].some(isBegin)) return false;
  return batch.children.length === 0 || (batch.kept ?? 0) > 0;
}

/** Whether something was done to the seed, or seen of it. */
function isBegin(event: Batch['events'][number]): boolean {
  const { isStep, isLook } = meaningOf(event);
  return isStep || isLook;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((all, n) => all + n, 0);
}

/** Mean length of a year of the Gregorian calendar, in days. */
const YEAR = 365.2425;

/** Whole years since the harvest: both ends where the harvest is not known to the day. */
export interface Age {
  readonly least: number;
  readonly most: number;
}

/** Undefined where nobody knows when the seed was collected, or it was collected later. */
export function ageOn(collected: DaySpan | undefined, day: Day): Age | undefined {
  if (!collected || collected.first > day) return undefined;
  const years = (from: Day) => Math.max(0, Math.floor((day - from) / YEAR));
  return { least: years(collected.last), most: years(collected.first) };
}

export function mayBeAsOld(a: Age, b: Age): boolean {
  return a.least <= b.most && b.least <= a.most;
}
