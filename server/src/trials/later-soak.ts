/** Seed that was watched and then soaked: from the day of that soak on, beside seed that was left as it was. */
import { accounted, countsOf, type Batch, type BatchEvent, type CountEvent, type CutEvent, type Lot } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import { faultOf, type Check, type Course } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import type { Share } from '../measures/difference.ts';
import { fisher, reaches } from '../measures/fisher.ts';
import { ONE_LOOK_DAYS } from '../measures/shared-looks.ts';
import type { WEAK } from '../measures/weak.ts';
import { conditionsOf, type Conditions } from './conditions.ts';
import { classesOf, dayZeroOf, isPick, seedlingsUntil, seenAt } from './course.ts';
import { isDropsOnSeed, wettedBy } from './drops-on-seed.ts';
import type { Faults } from './faults.ts';
import { inGroups, isWatchedSoak, type Group, type LeftOut, type TrialBatch } from './groups.ts';
import { pairOf, type Pair } from './pairs.ts';
import { minutesWet } from './surroundings.ts';
import { isActiveSoak, treatmentOf } from './treatment.ts';
import { warmthIn } from './warmth.ts';

/** A treatment that came late, and what it begins with. */
interface Later {
  readonly batch: Batch;
  readonly soak: BatchEvent & { readonly type: 'soak' };
  /** The last count before it: what had germinated by then is on neither side. */
  readonly base: CountEvent;
  /** The day of the soak. */
  readonly since: Day;
}

export interface LaterPairs {
  readonly pairs: readonly Pair[];
  readonly leftOut: readonly LeftOut[];
}

export function laterPairsOf(lot: Lot, faulty: Faults): LaterPairs {
  const pairs: Pair[] = [];
  const leftOut: LeftOut[] = [];
  const batches = [...lot.batches.values()].filter(batch => !faulty.has(batch));
  const open = new Set(batches.flatMap(laterSoaksOf));
  for (const first of open) {
    open.delete(first);
    const treated = restOf(first.batch, first.base, first);
    if (isUndefined(treated)) {
      leftOut.push({ batch: first.batch, why: notCompared(first, treated.undefined) });
      continue;
    }
    const group = [treated, ...replicatesOf(treated, first, open)];
    const controls = batches.flatMap(batch => controlOf(batch, first));
    if (controls.length > 0) pairs.push(pairFrom(first, group, controls));
    else leftOut.push(...group.map(({ batch }) => ({ batch, why: notCompared(first, noControl(first)) })));
  }
  return { pairs, leftOut };
}

function notCompared({ since }: Later, why: string): Undefined {
  return undefinedBecause(`its soak of ${isoOf(since)} is not compared: ${why}`);
}

function noControl({ base }: Later): string {
  return `no other batch was counted both on ${isoOf(base.entry.moment.day)} and after the soak`;
}

/** Other batches that had the same soak on the same day; they are taken out of `open`. */
function replicatesOf(treated: TrialBatch, first: Later, open: Set<Later>): TrialBatch[] {
  return [...open].flatMap(other => {
    if (!isOneLook(other, first) || other.since !== first.since) return [];
    const rest = restOf(other.batch, other.base, other);
    if (isUndefined(rest) || inGroups([treated, rest]).length > 1) return [];
    open.delete(other);
    return [rest];
  });
}

function pairFrom({ since, base }: Later, treated: readonly TrialBatch[], controls: readonly TrialBatch[]): Pair {
  const { treatment } = treated[0]!;
  const untreated = inGroups(controls).map((group): Group => ({ ...group, since }));
  const found = pairOf({ treatment, batches: treated, since }, untreated);
  const unlike = found.untreated && unlikeRests(found.treated, found.untreated, base);
  const pair = unlike === undefined ? found : { ...found, alsoDiffers: [...found.alsoDiffers, unlike] };
  const remark = `days count from ${isoOf(since)}, the day of the soak; seed that had germinated or rotted by `
    + `${isoOf(base.entry.moment.day)} is on neither side`;
  return { ...pair, remarks: [remark, ...pair.remarks] };
}

/** Chance alone makes halves of one seed so unlike 1 time in 5. Common practice, no source. */
const UNLIKE = 0.2;

/**
 * The rest of seed that had germinated well is poor seed, and a batch that was soaked because it was late catches up by
 * itself: where one side was ahead before the soak, what came after it is no effect of that.
 */
function unlikeRests(treated: Group, untreated: Group, base: CountEvent): string | undefined {
  const [a, b] = [treated, untreated].map(group => sumOf(group, base.entry.moment.day));
  if (!a || !b || !reaches(fisher(a, b).twoSided, UNLIKE)) return undefined;
  return `the seed (before the soak ${a.x} of ${a.n} had germinated, and ${b.x} of ${b.n} of the untreated)`;
}

/** What had germinated by a look, of all that was there. */
function sumOf({ batches }: Group, day: Day): Share | undefined {
  let [x, n] = [0, 0];
  for (const { batch } of batches) {
    const look = countsOf(batch).findLast(({ entry }) => entry.moment.day <= day + ONE_LOOK_DAYS);
    if (look?.tested === undefined) return undefined;
    x += look.after.germinated;
    n += look.tested - look.after.lost;
  }
  return { x, n };
}

function laterSoaksOf(batch: Batch): Later[] {
  return batch.events.flatMap((soak, i) => {
    if (!isWatchedSoak(batch, soak)) return [];
    const base = batch.events.slice(0, i).findLast(event => event.type === 'count');
    return base ? [{ batch, soak, base, since: soak.entry.moment.day }] : [];
  });
}

function isOneLook(a: Pick<Later, 'base'>, b: Pick<Later, 'base'>): boolean {
  return Math.abs(a.base.entry.moment.day - b.base.entry.moment.day) <= ONE_LOOK_DAYS;
}

/** A batch that was left as it was, where it was looked at when the soak began and again later. */
function controlOf(batch: Batch, later: Later): TrialBatch[] {
  const base = countsOf(batch).findLast(event => isOneLook({ base: event }, later));
  if (!base || batch.events.some(event => isLateIn(event, later))) return [];
  const rest = restOf(batch, base, later);
  return isUndefined(rest) ? [] : [rest];
}

/** It was treated between the look and the day after the soak, so that it was not left as it was. */
function isLateIn(event: BatchEvent, { base, since }: Later): boolean {
  const { entry: { moment: { day } } } = event;
  return event.type === 'soak' && isActiveSoak(event.soak)
    && day >= base.entry.moment.day - ONE_LOOK_DAYS && day <= since + ONE_LOOK_DAYS;
}

/** What had not germinated at a look, from the day of the soak to the next treatment of the batch. */
function restOf(batch: Batch, base: CountEvent, { soak, since }: Later): TrialBatch | Undefined {
  const from = batch.events.indexOf(base) + 1;
  const before = [...batch.inherited, ...batch.events.slice(0, from)];
  const wetted = before.find(event => isDropsOnSeed(batch, event));
  if (wetted) return wettedBy(wetted);
  const end = batch.events.findIndex((event, i) => i >= from && event !== soak && (
    (event.type === 'soak' && isActiveSoak(event.soak)) || isDropsOnSeed(batch, event) || isPick(event, batch.events)));
  const events = end < 0 ? batch.events : batch.events.slice(0, end);
  const later = events.slice(from).flatMap(lookOf);
  const tested = later.at(-1)?.tested;
  if (later.every(({ entry }) => entry.moment.day < since)) return undefinedBecause('the batch was not counted after it');
  if (tested === undefined) return undefinedBecause('the number of seeds is unknown');
  const isTreated = events.some(event => event.type === 'soak' && event.soak === soak.soak);
  const whole = courseAfter(base, later, isTreated ? surelyNew : perhapsNew, {
    since, sown: tested - accounted(base.after), closed: end >= 0 || batch.closed !== undefined,
    until: seedlingsUntil(events, since), cut: events.find(event => event.type === 'cut'),
  });
  const isCut = end >= 0 && isPick(batch.events[end]!, batch.events);
  const course = isCut ? { ...whole, cutShort: true } : whole;
  const fault = faultOf(course);
  if (fault) return fault;
  const soaks = batch.soaks.filter(each => each === soak.soak);
  const zero = dayZeroOf(batch);
  if (zero === undefined) return undefinedBecause('it has no day 0');
  return {
    batch, course, endedBy: end < 0 ? undefined : batch.events[end],
    treatment: treatmentOf(batch, soaks),
    conditions: conditionsFrom(batch, events, since, zero, base),
  };
}

/** Weak seedlings found since a look, by the totals of then and now and the seedlings of then. */
type NewOnes = (before: number, after: number, old: number) => number;

/** The weak seedlings found since may be the old ones as far as these go: what a treatment is blamed for is not. */
const surelyNew: NewOnes = (_, after, old) => Math.max(0, after - old);

/** None of the old ones, for seed that it is held against. */
const perhapsNew: NewOnes = (before, after) => after - before;

/** What was seen on a day, of how many seeds. */
type Look = Pick<CountEvent, 'entry' | 'after' | 'tested'>;

/** A cut test that adds up is a look, too. */
function lookOf(event: BatchEvent): Look[] {
  const after = seenAt(event);
  return after && (event.type === 'count' || event.type === 'cut') ? [{ entry: event.entry, after, tested: event.tested }] : [];
}

interface After {
  readonly since: Day;
  readonly sown: number;
  readonly closed: boolean;
  readonly until: number | undefined;
  readonly cut: CutEvent | undefined;
}

function courseAfter(
  base: CountEvent, later: readonly Look[], newOnes: NewOnes, { since, sown, closed, until, cut }: After,
): Course {
  const gone = base.after;
  const checkOf = ({ entry, after }: Look): Check => {
    const weak = (what: typeof WEAK[number]) => newOnes(gone[what], after[what], gone.germinated);
    return {
      day: entry.moment.day - since, germinated: after.germinated - gone.germinated,
      rotted: after.rotted - gone.rotted, lost: after.lost - gone.lost,
      leggy: weak('leggy'), abnormal: weak('abnormal'), died: weak('died'),
    };
  };
  return {
    sown, checks: [base, ...later].map(checkOf), ...(closed && { closed }),
    ...(until !== undefined && { seedlingsUntil: until }), ...(cut && { cut: classesOf(cut) }),
  };
}

/** Its conditions, with what was done before the look told apart from what came after. */
function conditionsFrom(
  batch: Batch, events: readonly BatchEvent[], since: Day, zero: Day, base: CountEvent,
): Conditions {
  const before = batch.soaks.filter(({ start }) => start.day < base.entry.moment.day);
  const then = batch.soaks.filter(({ start }) => Math.abs(start.day - since) <= ONE_LOOK_DAYS);
  const temperature = events.map(({ type, entry }) => (type === 'sow' ? warmthIn(entry.record) : undefined))
    .findLast(warmth => warmth !== undefined);
  const found = conditionsOf(batch, since, events);
  return {
    ...found, ...(temperature && { temperature }),
    begun: zero, earlier: treatmentOf(batch, before),
    isWet: then.length > 0, wet: minutesWet(then),
  };
}
