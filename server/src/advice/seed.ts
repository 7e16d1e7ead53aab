/** What is there to decide about: seed of a lot that nothing was done to, how much of it, and how old it is. */
import type { Batch, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { rangeOf } from '../journal/estimates.ts';
import type { SeedRange } from '../model/estimate.ts';
import type { Day } from '../model/day.ts';
import { meaningOf } from '../model/events.ts';
import type { DaySpan } from '../model/record.ts';
import { standingOf } from '../calendar/standing.ts';
import type { UntreatedShare } from '../trials/untreated-shares.ts';

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

/** Seed that differs in age by no more is as old. Common practice, no source. */
const SAME_AGE = YEAR / 2;

export type AsOld = 'yes' | 'perhaps' | 'no';

/** Whether seed was as old on its day as other seed is on another; `perhaps` where the harvests leave room for both. */
function isAsOld(
  one: { readonly lot: Lot; readonly day: Day }, other: { readonly lot: Lot; readonly day: Day },
): AsOld {
  const [a, b] = [one.lot.collected, other.lot.collected];
  if (!a || !b) return 'perhaps';
  const apart = other.day - one.day;
  // Seed of one lot was collected on one day, whichever that was.
  const [least, most] = one.lot === other.lot ? [apart, apart] : [apart + a.first - b.last, apart + a.last - b.first];
  if (Math.min(Math.abs(least), Math.abs(most)) > SAME_AGE && least * most > 0) return 'no';
  return Math.max(Math.abs(least), Math.abs(most)) <= SAME_AGE ? 'yes' : 'perhaps';
}

/** When it was sown. */
export function ageOf(share: UntreatedShare): Age | undefined {
  return ageOn(share.lot.collected, dayZeroOf(share));
}

/** Whether untreated seed of known age was as old, when it was sown, as seed of a lot is on a day. */
export function agesBeside(
  shares: readonly UntreatedShare[], lot: Lot, day: Day,
): readonly { readonly share: UntreatedShare; readonly asOld: AsOld }[] {
  return shares.filter(share => ageOf(share) !== undefined)
    .map(share => ({ share, asOld: isAsOld({ lot: share.lot, day: dayZeroOf(share) }, { lot, day }) }));
}

function dayZeroOf({ group }: UntreatedShare): Day {
  return group.batches[0]!.conditions.dayZero;
}
