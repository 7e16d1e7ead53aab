/** What one lot tells of its treatments: each against the untreated seed, and a ladder of doses as one. */
import type { Lot } from '../journal/life.ts';
import { compare, type Comparison } from '../measures/comparison.ts';
import { judgeLadder, type Ladder } from '../measures/ladder.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { judge, type Verdict } from '../measures/verdict.ts';
import type { Agent } from '../solutions/agent.ts';
import { coursesOf, differences, groupsOf, type Group, type LeftOut } from './groups.ts';

/** A treated group and the untreated group that is most like it. */
export interface Pair {
  readonly treated: Group;
  readonly untreated: Group | undefined;
  /** What else differs, in plain words. */
  readonly alsoDiffers: readonly string[];
}

export interface Contest extends Pair {
  readonly comparison: Comparison | Undefined;
  readonly verdict: Verdict;
}

/** Several doses of one agent against the same untreated seed; doses in ppm. */
export interface DoseLadder {
  readonly agent: Agent;
  /** Ascending by dose, in step with the doses of `ladder`. */
  readonly rungs: readonly Pair[];
  readonly ladder: Ladder;
}

export interface LotTrial {
  readonly lot: Lot;
  readonly groups: readonly Group[];
  readonly leftOut: readonly LeftOut[];
  readonly contests: readonly Contest[];
  readonly ladders: readonly DoseLadder[];
}

const memo = new WeakMap<Lot, LotTrial>();

/** The trial of a lot; kept as long as the lot itself is. */
export function trialOf(lot: Lot): LotTrial {
  const known = memo.get(lot);
  if (known) return known;
  const { groups, leftOut } = groupsOf(lot);
  const untreated = groups.filter(({ treatment }) => treatment.doses.length === 0);
  const pairs = groups.filter(({ treatment }) => treatment.doses.length > 0).map(treated => pairOf(treated, untreated));
  const ladders = laddersOf(pairs);
  const trial = { lot, groups, leftOut, ladders, contests: pairs.map(pair => contestOf(pair, ladders)) };
  memo.set(lot, trial);
  return trial;
}

function pairOf(treated: Group, untreated: readonly Group[]): Pair {
  const [best] = untreated
    .map(group => ({ treated, untreated: group, alsoDiffers: differences(treated, group) }))
    .sort((a, b) => a.alsoDiffers.length - b.alsoDiffers.length);
  return best ?? { treated, untreated: undefined, alsoDiffers: [] };
}

/** Pairs of one agent in several known doses against the same untreated seed; rungs in order of the dose. */
function laddersOf(pairs: readonly Pair[]): DoseLadder[] {
  const rungs = new Map<string, Map<number, Pair>>();
  for (const pair of pairs) {
    const [dose, ...others] = pair.treated.treatment.doses;
    if (!dose || others.length > 0 || dose.ppm === undefined || !pair.untreated) continue;
    const key = `${dose.agent.word} ${pair.untreated.batches[0]?.batch.path}`;
    const byDose = rungs.get(key) ?? new Map<number, Pair>();
    const known = byDose.get(dose.ppm);
    // Of two batches with one dose under different conditions the one most like the untreated seed is the rung.
    if (!known || pair.alsoDiffers.length < known.alsoDiffers.length) byDose.set(dose.ppm, pair);
    rungs.set(key, byDose);
  }
  return [...rungs.values()].filter(byDose => byDose.size > 1).map(byDose => {
    const ordered = [...byDose].sort(([a], [b]) => a - b);
    const first = ordered[0]![1];
    const doses = ordered.map(
      ([dose, { treated, alsoDiffers }]) => ({ dose, alsoDiffers, batches: coursesOf(treated) }));
    return {
      agent: first.treated.treatment.doses[0]!.agent,
      rungs: ordered.map(([, pair]) => pair),
      ladder: judgeLadder(coursesOf(first.untreated!), doses),
    };
  });
}

function contestOf(pair: Pair, ladders: readonly DoseLadder[]): Contest {
  for (const { rungs, ladder } of ladders) {
    const judged = ladder.doses[rungs.indexOf(pair)];
    if (judged) return { ...pair, comparison: judged.comparison, verdict: judged.verdict };
  }
  const { treated, untreated, alsoDiffers } = pair;
  const comparison = untreated
    ? compare(coursesOf(treated), coursesOf(untreated))
    : undefinedBecause('no untreated seed of this lot was sown beside it');
  return { ...pair, comparison, verdict: judge(comparison, { alsoDiffers }) };
}
