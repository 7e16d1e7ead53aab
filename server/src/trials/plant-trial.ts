/** What all lots of a species or a genus tell together, over the winters: each lot compared with itself only. */
import type { Lot } from '../journal/life.ts';
import { acrossLots, type AcrossLots, type LotPair } from '../measures/across-lots.ts';
import type { Sides } from '../measures/seen.ts';
import type { Agent } from '../solutions/agent.ts';
import type { Day } from '../model/day.ts';
import { isSameDose } from './alike.ts';
import type { Group } from './groups.ts';
import { trialOf, type Contest, type LotTrial } from './lot-trial.ts';
import { coursesOfPair, isFull, type FullPair, type PairCourses } from './pairs.ts';
import { onlyDose } from './treatment.ts';
import { untreatedShares, type UntreatedShare } from './untreated-shares.ts';

/** One lot's treated seed, in whatever doses, with the untreated seed that it was compared with. */
export interface Stratum {
  readonly lot: Lot;
  readonly trial: LotTrial;
  readonly pairs: readonly (FullPair & Contest)[];
}

/** The lots in which an agent alone was tried against untreated seed with nothing else differing. */
export interface AgentAcross {
  readonly agent: Agent;
  /** In step with the comparisons of `across`; a lot that was tried under several conditions has several. */
  readonly strata: readonly Stratum[];
  readonly across: AcrossLots;
}

export interface PlantTrial {
  readonly plant: string;
  readonly lots: readonly Lot[];
  /** Of each lot. */
  readonly trials: readonly LotTrial[];
  readonly agents: readonly AgentAcross[];
  readonly untreated: readonly UntreatedShare[];
  /** Comparisons whose day of judging has not come: they take no part. */
  readonly toBeJudged: readonly ToBeJudged[];
}

export interface ToBeJudged {
  readonly lot: Lot;
  /** In words. */
  readonly on: string;
}

interface Growing extends Stratum {
  readonly pairs: (FullPair & Contest)[];
}

/** Lots of one species, or of one genus, with what was tried on them. All doses of an agent count as treated. */
export function plantTrial(plant: string, lots: readonly Lot[], today: Day): PlantTrial {
  const byAgent = new Map<string, { agent: Agent; strata: Map<Group, Growing> }>();
  const toBeJudged: ToBeJudged[] = [];
  const trials = lots.map(lot => trialOf(lot, today));
  for (const trial of trials) {
    const { lot } = trial;
    for (const contest of trial.contests) {
      const agent = onlyDose(contest.treated.treatment)?.dose.agent;
      if (!agent || !isFull(contest) || contest.alsoDiffers.length > 0) continue;
      if (contest.judging?.state === 'waiting') {
        const { judging: { on } } = contest;
        if (!toBeJudged.some(each => each.lot === lot && each.on === on)) toBeJudged.push({ lot, on });
        continue;
      }
      const { strata } = byAgent.get(agent.word) ?? { strata: new Map<Group, Growing>() };
      const stratum = strata.get(contest.untreated) ?? { lot, trial, pairs: [] };
      stratum.pairs.push(contest);
      byAgent.set(agent.word, { agent, strata: strata.set(contest.untreated, stratum) });
    }
  }
  const agents = [...byAgent.values()].map(({ agent, strata: found }): AgentAcross => {
    const strata = [...found.values()];
    const doses = dosesOf(strata).map(({ strata: parts }) => parts.map(lotPairOf));
    return { agent, strata, across: acrossLots(strata.map(lotPairOf), doses) };
  });
  return { plant, lots, trials, agents, untreated: untreatedShares(trials), toBeJudged };
}

/** One dose of an agent in all lots in which it was tried. */
export interface DoseAcross {
  /** Undefined for what nobody measured. */
  readonly ppm: number | undefined;
  readonly strata: readonly Stratum[];
}

/** The strata of each dose by itself; what nobody measured is a dose of its own. */
export function dosesOf(strata: readonly Stratum[]): DoseAcross[] {
  const doses: { readonly ppm: number | undefined; readonly strata: Stratum[] }[] = [];
  for (const stratum of strata) {
    for (const pair of stratum.pairs) {
      const ppm = onlyDose(pair.treated.treatment)?.dose.ppm;
      const known = doses.find(dose => (
        dose.ppm === undefined || ppm === undefined ? dose.ppm === ppm : isSameDose(dose.ppm, ppm)));
      const own = { ...stratum, pairs: [pair] };
      if (known) known.strata.push(own);
      else doses.push({ ppm, strata: [own] });
    }
  }
  return doses;
}

export function lotPairOf({ lot, pairs }: Stratum): LotPair {
  const courses = pairs.map(coursesOfPair);
  return {
    lot: lot.id, treated: courses.map(({ treated }) => treated), untreated: courses[0]!.untreated,
    whole: wholeOf(courses),
    isStrict: pairs.some(({ judging }) => judging?.state === 'off the day'),
  };
}

/** All of them as they were counted, where some are cut at a day of judging. */
function wholeOf(courses: readonly PairCourses[]): Sides | undefined {
  if (courses.every(({ whole }) => !whole)) return undefined;
  return {
    treated: courses.flatMap(({ treated, whole }) => whole?.treated ?? treated),
    untreated: courses[0]!.whole?.untreated ?? courses[0]!.untreated,
  };
}
