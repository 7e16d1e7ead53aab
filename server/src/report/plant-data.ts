/** The trials of a plant over its lots as plain data. */
import type { AcrossClaim } from '../measures/across-lots.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import type { AgentAcross, PlantTrial } from '../trials/plant-trial.ts';
import type { PlantsReport } from './report.ts';
import { comparisonData, findingData } from './trial-data.ts';

export function plantsData({ by, plants }: PlantsReport): object {
  return { by, plants: plants.map(plantData) };
}

function plantData({ plant, lots, agents, untreated, toBeJudged }: PlantTrial): object {
  return {
    plant, lots: lots.map(({ id }) => id), agents: agents.map(agentData),
    untreated: untreated.map(({ winter, lot, group, pooled: { x, n, interval }, byDay, open }) => ({
      winter, lot: lot.id, batches: group.batches.map(({ batch }) => batch.path),
      count: x, of: n, share: x / n, interval, byDay, open,
    })),
    toBeJudged: toBeJudged.map(({ lot, on }) => ({ lot: lot.id, on })),
  };
}

function agentData({ agent, strata, across }: AgentAcross): object {
  const { comparisons, lots, open, better, worse, difference, mantelHaenszel, homogeneity } = across;
  const { verdict, rule, sentence } = across;
  return {
    agent: agent.word, lots, open, verdict, rule, sentence, difference,
    better: claimData(better), worse: claimData(worse),
    strata: strata.map(({ lot, pairs }, i) => ({
      lot: lot.id,
      treated: pairs.flatMap(({ treated }) => treated.batches.map(({ batch }) => batch.path)),
      untreated: pairs[0]!.untreated.batches.map(({ batch }) => batch.path),
      comparison: comparisonData(comparisons[i]!),
    })),
    mantelHaenszel: isUndefined(mantelHaenszel) ? mantelHaenszel : {
      excess: mantelHaenszel.excess, oddsRatio: mantelHaenszel.oddsRatio,
      test: mantelHaenszel.test, corrected: mantelHaenszel.corrected,
    },
    homogeneity,
  };
}

function claimData(claim: AcrossClaim | Undefined): object {
  if (isUndefined(claim)) return claim;
  const { germinated, sound, ahead, sooner, p } = claim;
  return {
    p, germinated: findingData(germinated), sound: findingData(sound),
    ahead: findingData(ahead), sooner: findingData(sooner),
  };
}
