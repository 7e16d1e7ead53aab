/** What became of stuck seedlings from the day of the drops up to a day on which all of them were looked at. */
import { countsOf, noTotals, type Batch, type BatchEvent, type CountEvent, type LeaveEvent } from '../journal/life.ts';
import { ageTogether, ONE_LOOK_DAYS } from '../measures/shared-looks.ts';
import type { Share } from '../measures/difference.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import type { Day } from '../model/day.ts';
import type { SeedRange } from '../model/estimate.ts';
import { factOf } from '../model/record.ts';

export type Drops = BatchEvent & { readonly type: 'apply' };

/** A share of which the counts give both numbers, or limits of them. */
export interface RangedShare {
  readonly x: SeedRange;
  readonly n: SeedRange;
}

/** What became of the stuck seedlings of a batch, or of several. */
export interface Fate {
  /** Freed from the coat, of those stuck (when the drops were given). */
  readonly freed: RangedShare;
  /** Still alive, of those that were when the drops were given. */
  readonly alive: RangedShare;
}

/** A batch with stuck seedlings; without `drops` where it was given none. */
export interface Stuck {
  readonly batch: Batch;
  readonly drops: Drops | undefined;
}

/** From the looks up to `from`, the day of the drops, to those up to `until`. */
export interface Watch {
  readonly from: Day;
  readonly until: Day;
  /** Some batch was looked at after `until`: that counts for nothing. */
  readonly isCut: boolean;
}

/**
 * The days between which batches with drops and batches without can be held against each other. Both must have been
 * looked at on one day before the drops and on one after them: seedlings die, and come free, on either side at any
 * time, and the side that was watched for longer shows more of it.
 */
export function watchOf(given: readonly Stuck[], without: readonly Stuck[]): Watch | Undefined {
  const days = given.map(({ drops }) => drops!.entry.moment.day);
  const from = Math.max(...days);
  if (from - Math.min(...days) > ONE_LOOK_DAYS) return undefinedBecause('the drops were given on different days');
  const all = [...given, ...without].map(({ batch, drops }) => {
    const day = drops?.entry.moment.day ?? from;
    const looks = countsOf(batch).map(({ entry }) => entry.moment.day);
    return { before: looks.findLast(look => look <= day), after: looks.filter(look => look > day) };
  });
  const before = all.map(({ before: day }) => day ?? -Infinity);
  const [first, last] = [Math.min(...before), Math.max(...before)];
  if (first !== last && last - first > ONE_LOOK_DAYS) {
    return undefinedBecause('the two sides were not looked at on the same day before the drops');
  }
  // Of courses that cannot be finished, for seedlings may die at any time.
  const until = ageTogether(all.map(({ after }) => (
    { sown: Infinity, checks: after.map(day => ({ day, germinated: 0 })) })));
  if (until === undefined) return undefinedBecause('the two sides were not looked at on the same day after the drops');
  const fault = [...given, ...without].map(each => changeOf(each, from, until)).find(why => why !== undefined);
  return fault ?? { from, until, isCut: all.some(({ after }) => after.at(-1)! > until) };
}

/** Why the seedlings of a batch are not those that were stuck on the day of the drops, or nothing if they are. */
function changeOf({ batch, drops }: Stuck, from: Day, until: Day): Undefined | undefined {
  const before = totalsOn(batch, drops?.entry.moment.day ?? from);
  if (stuckSeedlings(totalsOn(batch, until)) > stuckSeedlings(before)) {
    return undefinedBecause(`more seedlings of ${batch.path} were found stuck after the drops than before`);
  }
  // The totals go on to hold seedlings that left, so that they would be stuck, or alive, for ever.
  return batch.events.some(event => isLeaving(event) && event.entry.moment.day <= until)
    ? undefinedBecause(`seedlings of ${batch.path} were planted out, given away or lost before the last look compared`)
    : undefined;
}

function isLeaving(event: BatchEvent): event is LeaveEvent {
  return event.type === 'gone' || (event.type === 'leave' && event.seedlings > 0);
}

/** Fewer seedlings were given drops than were alive: how many stayed alive is not theirs alone. */
export function isPartly({ batch, drops }: Stuck): boolean {
  const named = namedIn(batch);
  const { germinated, died } = totalsOn(batch, drops!.entry.moment.day);
  return named !== undefined && named < germinated - died;
}

/** What was freed had been stuck, whether or not that was counted. */
export function stuckSeedlings({ stuck, freed }: CountEvent['after']): number {
  return Math.max(stuck, freed);
}

/** Why nothing can be said of what drops did to a batch, or nothing if it can. */
export function dropsFaultOf({ batch, drops }: Stuck): Undefined | undefined {
  if (!drops) return undefined;
  const { day } = drops.entry.moment;
  if (!countsOf(batch).some(({ entry }) => entry.moment.day > day)) {
    return undefinedBecause('its seedlings were not counted after the drops');
  }
  const named = namedIn(batch);
  const { most } = stuckBetween(totalsOn(batch, day), batch.totals);
  return named !== undefined && named < most
    ? undefinedBecause(`${named} of its ${most} stuck seedlings were given drops, and the counts do not tell which of them were freed`)
    : undefined;
}

/** From the day of its drops, if it had any, to its last count; `watch` sets other days. */
export function fateOf({ batch, drops }: Stuck, watch?: Pick<Watch, 'from' | 'until'>): Fate {
  const from = totalsOn(batch, drops?.entry.moment.day ?? watch?.from ?? -Infinity);
  const until = totalsOn(batch, watch?.until ?? Infinity);
  const [freed, died] = [until.freed - from.freed, until.died - from.died];
  const stuck = stuckBetween(from, until);
  // Drops for so many seedlings say how many of them were stuck and alive.
  const least = drops && namedIn(batch) !== undefined ? stuck.most : Math.max(freed, stuck.least);
  const alive = Math.max(0, from.germinated - from.died);
  // Those that germinated since may be the ones that died.
  const late = until.germinated - from.germinated;
  return {
    freed: { x: sure(freed), n: { least, most: Math.max(least, stuck.most) } },
    alive: {
      x: { least: Math.max(0, alive - died), most: alive - Math.min(alive, Math.max(0, died - late)) },
      n: sure(alive),
    },
  };
}

/** Stuck seedlings that were alive: the counts do not tell whether those that had died were stuck. */
function stuckBetween(from: CountEvent['after'], until: CountEvent['after']): SeedRange {
  const stuck = stuckSeedlings(until) - from.freed;
  const alive = until.germinated - from.died;
  return { least: Math.max(0, stuck - from.died), most: Math.max(0, Math.min(stuck, alive)) };
}

function totalsOn(batch: Batch, day: Day): CountEvent['after'] {
  return countsOf(batch).findLast(({ entry }) => entry.moment.day <= day)?.after ?? noTotals;
}

/** How many seedlings were given drops, in several rounds the most of one; undefined where one does not say it. */
function namedIn({ events }: Batch): number | undefined {
  const numbers = events.filter((event): event is Drops => event.type === 'apply')
    .map(({ entry }) => factOf(entry.record, 'seedlings')?.n.value);
  return numbers.some(n => n === undefined) ? undefined : Math.max(...numbers.map(n => n!));
}

function sure(n: number): SeedRange {
  return { least: n, most: n };
}

export function sumOf(shares: readonly RangedShare[]): RangedShare {
  const sum = (of: (share: RangedShare) => number) => shares.reduce((all, share) => all + of(share), 0);
  return {
    x: { least: sum(({ x }) => x.least), most: sum(({ x }) => x.most) },
    n: { least: sum(({ n }) => n.least), most: sum(({ n }) => n.most) },
  };
}

/** The share that is the smallest, or the greatest, within the limits. */
export function endOf({ x, n }: RangedShare, end: 'least' | 'most'): Share {
  return end === 'least' ? { x: x.least, n: n.most } : { x: x.most, n: n.least };
}

export function isSure({ x, n }: RangedShare): boolean {
  return x.least === x.most && n.least === n.most;
}
