/** A winter as values: what was begun in it, what that came to, what still waits, what is left in the packets. */
import { isLeftOff } from '../../calendar/left-off.ts';
import { begunOn, isOpen, standingOf } from '../../calendar/standing.ts';
import { rangeOf, rangeOver } from '../../journal/estimates.ts';
import { isToldByParts } from '../../journal/given-out.ts';
import { accounted, type Batch, type Lot } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import type { Day } from '../../model/day.ts';
import { sumOfRanges, type SeedRange } from '../../model/estimate.ts';
import type { Winter } from '../../model/winter.ts';
import type { Group } from '../../trials/groups.ts';
import type { Contest } from '../../trials/lot-trial.ts';
import { readyBefore, type ReadyRecord } from '../../trials/ready.ts';
import type { LotReport, Report } from '../report.ts';

/** A lot of which something was begun in the winter. */
export interface LotReview {
  readonly lot: Lot;
  readonly batches: readonly Batch[];
  /** Groups of the lot's trial with such a batch, seed that was estimated too. */
  readonly groups: readonly Group[];
  /** Treatments with a batch that was begun then, as the one engine judges them. */
  readonly contests: readonly Contest[];
  /** Untreated seed of the lot that germinated well and soon. */
  readonly ready: ReadyRecord | undefined;
  readonly errors: number;
}

/** Seed that may still germinate. */
export interface Waiting {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly begun: Day;
  /** Undefined where the number of seeds is not known; a range where it was estimated. */
  readonly seeds: SeedRange | undefined;
}

/** What is left of a lot for another try. */
export interface Packet {
  readonly lot: Lot;
  /** Seeds to which nothing was done; undefined where nobody counted them. */
  readonly unsown: SeedRange | undefined;
  /** Seeds that were begun with and may still germinate; undefined where their number is not known. */
  readonly waiting: SeedRange | undefined;
  readonly contests: readonly Contest[];
}

export interface WinterReview {
  /** Tells one journal from another where there are several. */
  readonly name: string | undefined;
  readonly winter: Winter;
  readonly now: Moment;
  readonly lots: readonly LotReview[];
  /** Of this winter, and of earlier ones. */
  readonly waiting: readonly Waiting[];
  readonly earlier: readonly Waiting[];
  /** Batches of earlier winters that nothing was written of for more than PAST_DAYS. */
  readonly forgotten: number;
  /** Lots that were tried this winter, and all others that may have been there by its end. */
  readonly packets: readonly Packet[];
  readonly others: readonly Packet[];
}

/** `report` is that of all lots, or of those asked for. */
export function winterReview({ name, now, lots }: Report, winter: Winter): WinterReview {
  const reviews = lots.map(each => reviewOf(each, winter, now)).filter(({ batches }) => batches.length > 0);
  const tried = new Set(reviews.map(({ lot }) => lot));
  const waiting = lots.flatMap(({ lot }) => waitingIn(lot, now));
  const earlier = waiting.filter(({ begun }) => begun < winter.first);
  const left = earlier.filter(({ batch }) => !isLeftOff(standingOf(batch, now), now));
  const packets = lots.map(each => packetOf(each, now)).filter(({ unsown }) => unsown?.most !== 0);
  return {
    name, winter, now, lots: reviews,
    waiting: waiting.filter(({ begun }) => isIn(begun, winter)),
    earlier: left,
    forgotten: earlier.length - left.length,
    packets: packets.filter(({ lot }) => tried.has(lot)),
    others: packets.filter(({ lot }) => !tried.has(lot) && isThere(lot, winter)),
  };
}

/** Not a harvest of a later year. */
function isThere({ collected }: Lot, { last }: Winter): boolean {
  return !collected || collected.first <= last;
}

function reviewOf({ lot, trial, errors }: LotReport, winter: Winter, now: Moment): LotReview {
  const batches = [...lot.batches.values()].filter(batch => {
    const begun = begunOn(batch, now);
    return begun !== undefined && isIn(begun, winter) && !isToldByParts(batch);
  });
  const paths = new Set(batches.map(({ path }) => path));
  const isOfIt = (group: Group) => group.batches.some(({ batch }) => paths.has(batch.path));
  const contests = [...trial.contests, ...trial.estimated].filter(({ treated }) => isOfIt(treated));
  const judged = trial.estimated.flatMap(({ treated, untreated }) => (untreated ? [treated, untreated] : [treated]));
  return {
    lot, batches, errors, contests,
    groups: [...trial.groups, ...judged].filter(isOfIt),
    ready: batches.length > 0 ? readyBefore([lot], Infinity) : undefined,
  };
}

function isIn(day: Day, { first, last }: Winter): boolean {
  return first <= day && day <= last;
}

function waitingIn(lot: Lot, now: Moment): Waiting[] {
  return [...lot.batches.values()].flatMap(batch => {
    const begun = begunOn(batch, now);
    const standing = standingOf(batch, now);
    if (begun === undefined || !isOpen(standing)) return [];
    const seeds = rangeOver([batch, ...batch.worlds], ({ tested }) => (
      tested === undefined ? undefined : Math.max(0, tested - accounted(standing.totals))));
    return seeds?.most === 0 ? [] : [{ lot, batch, begun, seeds }];
  });
}

function packetOf({ lot, trial }: LotReport, now: Moment): Packet {
  const contests = [...trial.contests, ...trial.estimated];
  const unsown = [...lot.batches.values()].map(batch => unsownIn(batch, now));
  return { lot, contests, unsown: sumOf(unsown), waiting: sumOf(waitingIn(lot, now).map(({ seeds }) => seeds)) };
}

const none: SeedRange = { least: 0, most: 0 };

/** Seeds of a batch to which nothing was done; of one that was sown in part what is left over. */
function unsownIn(batch: Batch, now: Moment): SeedRange | undefined {
  const { closed, givenOut, sowing } = standingOf(batch, now);
  if (closed || givenOut) return none;
  if (begunOn(batch, now) === undefined) return rangeOf(batch, 'kept');
  // What was soaked or put into a stage was begun with, all of it.
  if (!sowing) return none;
  return rangeOver([batch, ...batch.worlds], ({ kept, tested }) => (
    kept === undefined || tested === undefined ? undefined : Math.max(0, kept - tested))) ?? none;
}

/** Undefined where a part is not known. */
function sumOf(ranges: readonly (SeedRange | undefined)[]): SeedRange | undefined {
  return ranges.every(range => range !== undefined) ? sumOfRanges(ranges) : undefined;
}
