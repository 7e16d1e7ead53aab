/** Drops on seedlings that were stuck in their seed coats, beside stuck seedlings of the same lot without any. */
import type { Batch, Lot } from '../journal/life.ts';
import { boschloo } from '../measures/boschloo.ts';
import { newcombe, type Difference } from '../measures/difference.ts';
import { commonAge } from '../measures/looks.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import { differencesOf } from './conditions.ts';
import {
  dropsFaultOf, endOf, fateOf, isPartly, isSure, stuckSeedlings, sumOf, watchOf,
  type Drops, type Fate, type RangedShare, type Stuck, type Watch,
} from './drops-watch.ts';
import type { Faults } from './faults.ts';
import type { Group, LeftOut, TrialBatch } from './groups.ts';
import { isSameTreatment } from './treatment.ts';

/** The stuck seedlings of some batches, and what became of them. */
export interface DropsSide extends Fate {
  readonly batches: readonly Batch[];
  /** What they were given; undefined for none. */
  readonly drops: Drops | undefined;
}

export interface DropsOutcome {
  /** Undefined where the counts give only limits of the shares. */
  readonly difference: Difference | undefined;
  /** One-sided: that the side with drops is ahead, and that it is behind; of limits the greatest that they leave. */
  readonly more: number;
  readonly fewer: number;
}

export type DropsVerdict = 'helped' | 'harmed' | 'no sign of a benefit' | 'too few to tell' | 'cannot tell';

export interface DropsContest {
  readonly given: DropsSide;
  /** Without drops; undefined where every stuck seedling of the lot was given some. */
  readonly without: DropsSide | undefined;
  /** When both sides were looked at, or why they cannot be compared: each is then told up to its own last count. */
  readonly watch: Watch | Undefined | undefined;
  /** What else differs between the sides: then a difference is not due to the drops alone. */
  readonly alsoDiffers: readonly string[];
  /** Some living seedlings of the side with drops were given none: then the numbers alive are not compared. */
  readonly isPartly: boolean;
  readonly freed: DropsOutcome | undefined;
  readonly alive: DropsOutcome | undefined;
  readonly verdict: DropsVerdict;
}

export interface DropsTrial {
  /** One for each kind of drops. */
  readonly contests: readonly DropsContest[];
  readonly leftOut: readonly LeftOut[];
}

/** `keyOf` tells drops of one kind from those of another. */
export function dropsTrial(
  lot: Lot, groups: readonly Group[], faulty: Faults, keyOf: (drops: Drops) => string,
): DropsTrial {
  const leftOut: LeftOut[] = [];
  const kinds = new Map<string, Stuck[]>();
  for (const batch of lot.batches.values()) {
    if (stuckSeedlings(batch.totals) === 0) continue;
    const found = { batch, drops: batch.events.find((event): event is Drops => event.type === 'apply') };
    const why = faulty.get(batch) ?? dropsFaultOf(found);
    if (why) {
      leftOut.push({ batch, why });
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

function contestOf(
  given: readonly Stuck[], without: readonly Stuck[] | undefined, tried: ReadonlyMap<Batch, TrialBatch>,
): DropsContest {
  const watch = without && watchOf(given, without);
  const known = watch && !isUndefined(watch) ? watch : undefined;
  const sides = { given: sideOf(given, known), without: without && sideOf(without, known) };
  const alsoDiffers = without ? differencesBetween(given, without, tried) : [];
  const outcome = (what: keyof Fate) => (
    known && sides.without ? outcomeOf(sides.given[what], sides.without[what]) : undefined);
  const isPart = given.some(isPartly);
  const [freed, alive] = [outcome('freed'), isPart ? undefined : outcome('alive')];
  const isComparable = alsoDiffers.length === 0 && known !== undefined;
  const verdict = isComparable ? verdictOf(freed, alive) : 'cannot tell';
  return { ...sides, watch, alsoDiffers, isPartly: isPart, freed, alive, verdict };
}

function sideOf(all: readonly Stuck[], watch: Watch | undefined): DropsSide {
  const fates = all.map(each => fateOf(each, watch));
  return {
    batches: all.map(({ batch }) => batch), drops: all[0]!.drops,
    freed: sumOf(fates.map(({ freed }) => freed)), alive: sumOf(fates.map(({ alive }) => alive)),
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

/** Where the counts give only limits, each claim rests on the ends that speak least for it. */
function outcomeOf(given: RangedShare, without: RangedShare): DropsOutcome | undefined {
  if ([given, without].some(({ n }) => n.least < THRESHOLDS.fewestSeeds.value)) return undefined;
  return {
    difference: isSure(given) && isSure(without) ? newcombe(endOf(given, 'most'), endOf(without, 'most')) : undefined,
    more: boschloo(endOf(given, 'least'), endOf(without, 'most')),
    fewer: boschloo(endOf(without, 'least'), endOf(given, 'most')),
  };
}

/** The two outcomes share one error, so that either claim is wrong at most 1 time in 40 without any effect. */
function verdictOf(freed: DropsOutcome | undefined, alive: DropsOutcome | undefined): DropsVerdict {
  const level = THRESHOLDS.level.value / 2;
  if (!freed) return 'too few to tell';
  if (freed.fewer <= level || (alive && alive.fewer <= level)) return 'harmed';
  if (freed.more <= level || (alive && alive.more <= level)) return 'helped';
  return freed.difference && freed.difference.high < THRESHOLDS.points.value ? 'no sign of a benefit' : 'too few to tell';
}
