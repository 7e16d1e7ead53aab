/** Drops on seedlings that were stuck in their seed coats, beside stuck seedlings of the same lot without any. */
import { countsOf, type Batch, type BatchEvent, type Lot } from '../journal/life.ts';
import { boschloo } from '../measures/boschloo.ts';
import { newcombe, type Difference, type Share } from '../measures/difference.ts';
import { commonAge } from '../measures/looks.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import { factOf } from '../model/record.ts';
import { differencesOf } from './conditions.ts';
import { faultyBatches } from './faults.ts';
import type { Group, LeftOut, TrialBatch } from './groups.ts';
import { isSameTreatment } from './treatment.ts';

type Drops = BatchEvent & { readonly type: 'apply' };

/** The stuck seedlings of some batches, and what became of them. */
export interface DropsSide {
  readonly batches: readonly Batch[];
  /** What they were given; undefined for none. */
  readonly drops: Drops | undefined;
  /** Freed from the coat, of those stuck (when the drops were given). */
  readonly freed: Share;
  /** Alive, of all seedlings of these batches. */
  readonly alive: Share;
}

export interface DropsOutcome {
  readonly difference: Difference;
  /** One-sided: that the side with drops is ahead, and that it is behind. */
  readonly more: number;
  readonly fewer: number;
}

export type DropsVerdict = 'helped' | 'harmed' | 'no sign of a benefit' | 'too few to tell' | 'cannot tell';

export interface DropsContest {
  readonly given: DropsSide;
  /** Without drops; undefined where every stuck seedling of the lot was given some. */
  readonly without: DropsSide | undefined;
  /** What else differs between the sides: then a difference is not due to the drops alone. */
  readonly alsoDiffers: readonly string[];
  readonly freed: DropsOutcome | undefined;
  readonly alive: DropsOutcome | undefined;
  readonly verdict: DropsVerdict;
}

export interface DropsTrial {
  /** One for each kind of drops. */
  readonly contests: readonly DropsContest[];
  readonly leftOut: readonly LeftOut[];
}

interface Stuck extends Omit<DropsSide, 'batches'> {
  readonly batch: Batch;
}

/** `keyOf` tells drops of one kind from those of another. */
export function dropsTrial(lot: Lot, groups: readonly Group[], keyOf: (drops: Drops) => string): DropsTrial {
  const leftOut: LeftOut[] = [];
  const kinds = new Map<string, Stuck[]>();
  const faulty = faultyBatches(lot);
  for (const batch of lot.batches.values()) {
    if (stuckSeedlings(batch) === 0) continue;
    const found = faulty.get(batch) ?? stuckIn(batch);
    if ('undefined' in found) {
      leftOut.push({ batch, why: found });
      continue;
    }
    const key = found.drops ? keyOf(found.drops) : '';
    kinds.set(key, [...(kinds.get(key) ?? []), found]);
  }
  const without = kinds.get('');
  const tried = new Map(groups.flatMap(group => group.batches.map(each => [each.batch, each] as const)));
  const contests = [...kinds].filter(([key]) => key !== '').map(([, given]) => contestOf(given, without, tried));
  return { contests, leftOut };
}

/** What was freed had been stuck, whether or not that was counted. */
function stuckSeedlings({ totals }: Batch): number {
  return Math.max(totals.stuck, totals.freed);
}

function stuckIn(batch: Batch): Stuck | Undefined {
  const { totals } = batch;
  const stuck = stuckSeedlings(batch);
  const applied = batch.events.filter((event): event is Drops => event.type === 'apply');
  const [drops] = applied;
  const alive = { x: Math.max(0, totals.germinated - totals.died), n: totals.germinated };
  if (!drops) return { batch, drops, freed: { x: totals.freed, n: stuck }, alive };
  const before = countsOf(batch).findLast(({ entry }) => entry.moment.day <= drops.entry.moment.day)?.after.freed ?? 0;
  const isSeen = countsOf(batch).some(({ entry }) => entry.moment.day > drops.entry.moment.day);
  if (!isSeen) return undefinedBecause('its seedlings were not counted after the drops');
  const numbers = applied.map(({ entry }) => factOf(entry.record, 'seedlings')?.n.value);
  const given = numbers.some(n => n === undefined) ? undefined : Math.max(...numbers.map(n => n!));
  if (given !== undefined && given < stuck - before) {
    return undefinedBecause(`${given} of its ${stuck - before} stuck seedlings were given drops, and the counts do not tell which of them were freed`);
  }
  return { batch, drops, freed: { x: Math.max(0, totals.freed - before), n: stuck - before }, alive };
}

function contestOf(
  given: readonly Stuck[], without: readonly Stuck[] | undefined, tried: ReadonlyMap<Batch, TrialBatch>,
): DropsContest {
  const sides = { given: sideOf(given), without: without && sideOf(without) };
  const alsoDiffers = without ? differencesBetween(given, without, tried) : [];
  const freed = sides.without && outcomeOf(sides.given.freed, sides.without.freed);
  const alive = sides.without && outcomeOf(sides.given.alive, sides.without.alive);
  return { ...sides, alsoDiffers, freed, alive, verdict: verdictOf(freed, alive, alsoDiffers) };
}

function sideOf(all: readonly Stuck[]): DropsSide {
  const sum = (share: (each: Stuck) => Share) => all.map(share)
    .reduce((a, b) => ({ x: a.x + b.x, n: a.n + b.n }), { x: 0, n: 0 });
  return {
    batches: all.map(({ batch }) => batch), drops: all[0]!.drops,
    freed: sum(({ freed }) => freed), alive: sum(({ alive }) => alive),
  };
}

function differencesBetween(
  given: readonly Stuck[], without: readonly Stuck[], tried: ReadonlyMap<Batch, TrialBatch>,
): string[] {
  const found = given.flatMap(({ batch }) => without.flatMap(other => {
    const [a, b] = [tried.get(batch), tried.get(other.batch)];
    if (!a || !b) return ['how far they are alike'];
    const soak = isSameTreatment(a.treatment, b.treatment) ? [] : ['soak'];
    return [...soak, ...differencesOf(a.conditions, b.conditions, commonAge([a.course, b.course])).differing];
  }));
  return [...new Set(found)];
}

function outcomeOf(given: Share, without: Share): DropsOutcome | undefined {
  if (given.n < THRESHOLDS.fewestSeeds.value || without.n < THRESHOLDS.fewestSeeds.value) return undefined;
  return { difference: newcombe(given, without), more: boschloo(given, without), fewer: boschloo(without, given) };
}

/** The two outcomes share one error, so that either claim is wrong at most 1 time in 40 without any effect. */
function verdictOf(
  freed: DropsOutcome | undefined, alive: DropsOutcome | undefined, alsoDiffers: readonly string[],
): DropsVerdict {
  if (!freed) return 'too few to tell';
  if (alsoDiffers.length > 0) return 'cannot tell';
  const level = THRESHOLDS.level.value / 2;
  if (freed.fewer <= level || (alive && alive.fewer <= level)) return 'harmed';
  if (freed.more <= level || (alive && alive.more <= level)) return 'helped';
  return freed.difference.high < THRESHOLDS.points.value ? 'no sign of a benefit' : 'too few to tell';
}
