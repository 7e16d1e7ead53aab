/** The trials of a plant over its lots as plain data. */
import { isUndefined } from '../measures/measured.ts';
import type { AgentAcross, PlantTrial } from '../trials/plant-trial.ts';
import { logRankData } from './numbers-data.ts';
import type { PlantsReport } from './report.ts';
import { comparisonData } from './trial-data.ts';

export function plantsData({ by, plants }: PlantsReport): object {
  return { by, plants: plants.map(plantData) };
}

function plantData({ plant, lots, agents }: PlantTrial): object {
  return { plant, lots: lots.map(({ id }) => id), agents: agents.map(agentData) };
}

function agentData({ agent, strata, across }: AgentAcross): object {
  const { comparisons, lots, open, outcome, mantelHaenszel, homogeneity, speed, verdict, rule, sentence } = across;
  return {
    agent: agent.word, lots, open, outcome, verdict, rule, sentence,
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
    logRank: { sown: logRankData(speed.sown), germinated: logRankData(speed.germinated), combined: speed.combined },
  };
}
