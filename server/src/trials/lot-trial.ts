/** What one lot tells of its treatments: each against the untreated seed, and a ladder of doses as one. */
import type { Dose, Lot } from '../journal/life.ts';
import { dropsTrial, type DropsTrial } from './drops.ts';
import { compare, type Comparison } from '../measures/comparison.ts';
import type { Room } from '../measures/evidence.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import { roomsOf } from '../measures/room.ts';
import { judge, type Verdict } from '../measures/verdict.ts';
import { agreed, corners, isEstimated } from './estimated.ts';
import { faultyBatches, type Faults } from './faults.ts';
import type { Day } from '../model/day.ts';
import { groupsOf, type Group, type LeftOut } from './groups.ts';
import { judgeDayTold } from './judging.ts';
import { laterPairsOf } from './later-soak.ts';
import { laddersOf, type DoseLadder } from './ladders.ts';
import { coursesOfPair, isFull, pairOf, type Pair } from './pairs.ts';

export interface Contest extends Pair {
  readonly comparison: Comparison | Undefined;
  readonly verdict: Verdict;
}

export interface LotTrial {
  readonly lot: Lot;
  readonly groups: readonly Group[];
  readonly leftOut: readonly LeftOut[];
  /** One for each treated group, then one for each soak of seed that had been watched before. */
  readonly contests: readonly Contest[];
  readonly ladders: readonly DoseLadder[];
  /** Contests of batches whose seeds were estimated, with the verdict that both ends of each estimate give. */
  readonly estimated: readonly Contest[];
  /** Whether drops on stuck seedlings helped. */
  readonly drops: DropsTrial;
}

/** Batches that are in no comparison at all, with the reason: estimated ones may be in one of their own. */
export function notCompared({ leftOut, estimated }: LotTrial): readonly LeftOut[] {
  const told = new Set(estimated.flatMap(({ treated, untreated }) => (
    [treated, untreated].flatMap(group => group?.batches.map(({ batch }) => batch) ?? []))));
  return leftOut.filter(({ batch }) => !told.has(batch));
}

/** Batches of a trial that no verdict rests on until a record is put right, with the reason. */
export function leftOutByError(lot: Lot, today: Day): readonly LeftOut[] {
  const faulty = faultyBatches(lot, today);
  return trialOf(lot, today).leftOut.filter(({ batch }) => faulty.has(batch));
}

/** Tells drops of one liquid from those of another. */
function dropsKey(doses: readonly Dose[]): string {
  return doses.map(({ fact, agent, ppm }) => `${agent?.word ?? fact.name.text} ${ppm.ok ? ppm.value.toFraction() : '?'}`).join(' + ');
}

const memo = new WeakMap<Faults, LotTrial>();

/** The trial of a lot; kept as long as the lot itself is, and no look that was dated ahead is passed by the days. */
export function trialOf(lot: Lot, today: Day): LotTrial {
  const faulty = faultyBatches(lot, today);
  const known = memo.get(faulty);
  if (known) return known;
  const { groups, leftOut } = groupsOf(lot, faulty);
  const later = laterPairsOf(lot, faulty);
  const worlds = lot.root.worlds.length === 0 ? []
    : corners.map(bounds => contestsOf([...pairsAmong(groupsOf(lot, faulty, bounds).groups), ...later.pairs]));
  const estimated = agreed(worlds);
  const counted = [...pairsAmong(groups), ...later.pairs].filter(pair => !isToldByEstimate(pair, estimated));
  const contests = contestsOf(counted, worlds.map(world => fairIn(world.filter(isEstimated))));
  const all = [...leftOut, ...later.leftOut];
  const drops = dropsTrial(lot, groups, faulty, ({ doses }) => dropsKey(doses));
  const trial = { lot, groups, leftOut: all, contests, ladders: laddersOf(contests), estimated, drops };
  memo.set(faulty, trial);
  return trial;
}

/**
 * Whether a trial is told with its estimated batches: a part of its batches, picked because they were counted, must not
 * be told beside it as a trial of its own.
 */
function isToldByEstimate({ treated, untreated }: Pair, estimated: readonly Contest[]): boolean {
  return treated.since === undefined && estimated.some(other => (
    other.untreated && holds(other.treated, treated) && (!untreated || holds(other.untreated, untreated))));
}

function holds(whole: Group, part: Group): boolean {
  return part.batches.every(({ batch }) => whole.batches.some(other => other.batch === batch));
}

function pairsAmong(groups: readonly Group[]): Pair[] {
  const untreated = groups.filter(({ treatment }) => treatment.length === 0);
  return groups.filter(({ treatment }) => treatment.length > 0).map(treated => pairOf(treated, untreated));
}

/**
 * Judges all treatments of a lot together: of many tried at once, one would look good by chance. `beside`: what was
 * tried on estimated seed of the lot, by each way to take its estimates; the least room counts.
 */
function contestsOf(pairs: readonly Pair[], beside: readonly (readonly Comparison[])[] = []): Contest[] {
  const compared = pairs.map(pair => ({ ...pair, comparison: comparisonOf(pair) }));
  const fair = fairIn(compared);
  const rooms = (beside.length === 0 ? [[]] : beside).map(others => roomsOf([...fair, ...others]));
  return compared.map(pair => {
    const { alsoDiffers, judging, comparison } = pair;
    const room = isUndefined(comparison) ? undefined : leastRoom(rooms.flatMap(each => each.get(comparison) ?? []));
    const circumstances = { alsoDiffers, ...(room && { room }), ...(judging && { judging: judgeDayTold(judging) }) };
    return { ...pair, verdict: judge(comparison, circumstances) };
  });
}

/** Comparisons in which nothing but the treatment differs. */
function fairIn(pairs: readonly (Pair & { readonly comparison: Comparison | Undefined })[]): Comparison[] {
  return pairs.flatMap(({ alsoDiffers, comparison }) => (
    isUndefined(comparison) || alsoDiffers.length > 0 ? [] : [comparison]));
}

function leastRoom(rooms: readonly Room[]): Room | undefined {
  const most = (what: keyof Room) => Math.max(...rooms.map(room => room[what]));
  return rooms.length === 0 ? undefined : { better: most('better'), worse: most('worse'), treatments: most('treatments') };
}

function comparisonOf(pair: Pair): Comparison | Undefined {
  if (!isFull(pair)) return undefinedBecause('no untreated seed of this lot can be compared with it');
  const { treated, untreated, whole } = coursesOfPair(pair);
  return compare(treated, untreated, whole);
}
