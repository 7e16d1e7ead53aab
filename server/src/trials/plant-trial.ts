/** What all lots of a species or a genus tell together, over the winters: each lot compared with itself only. */
import type { Lot } from '../journal/life.ts';
import { acrossLots, type AcrossLots } from '../measures/across-lots.ts';
import type { Agent } from '../solutions/agent.ts';
import { coursesOf } from './groups.ts';
import { trialOf, type Contest } from './lot-trial.ts';

/** The lots in which an agent was tried against untreated seed with nothing else differing. */
export interface AgentAcross {
  readonly agent: Agent;
  /** In step with the comparisons of `across`. */
  readonly lots: readonly Lot[];
  readonly across: AcrossLots;
}

export interface PlantTrial {
  readonly plant: string;
  readonly lots: readonly Lot[];
  readonly agents: readonly AgentAcross[];
}

/** Lots of one species, or of one genus, with what was tried on them. All doses of an agent count as treated. */
export function plantTrial(plant: string, lots: readonly Lot[]): PlantTrial {
  const byAgent = new Map<string, { agent: Agent; contests: Map<Lot, Contest[]> }>();
  for (const lot of lots) {
    for (const contest of trialOf(lot).contests) {
      const [dose, ...others] = contest.treated.treatment.doses;
      if (!dose || others.length > 0 || !contest.untreated || contest.alsoDiffers.length > 0) continue;
      const entry = byAgent.get(dose.agent.word) ?? { agent: dose.agent, contests: new Map<Lot, Contest[]>() };
      entry.contests.set(lot, [...entry.contests.get(lot) ?? [], contest]);
      byAgent.set(dose.agent.word, entry);
    }
  }
  const agents = [...byAgent.values()].map(({ agent, contests }) => ({
    agent,
    lots: [...contests.keys()],
    across: acrossLots([...contests.values()].map(ofLot => ({
      treated: ofLot.flatMap(({ treated }) => coursesOf(treated)),
      untreated: [...new Set(ofLot.map(({ untreated }) => untreated!))].flatMap(coursesOf),
    }))),
  }));
  return { plant, lots, agents };
}

/** The genus of a plant's name, hybrid signs passed over. */
export function genusOf(plant: string): string {
  return plant.replace(/^[×x]\s*/u, '').split(/\s/)[0] ?? plant;
}

/** Lots put together by species or by genus, in the order of their names. */
export function byPlant(lots: Iterable<Lot>, by: 'species' | 'genus'): Map<string, Lot[]> {
  const groups = new Map<string, { name: string; lots: Lot[] }>();
  for (const lot of lots) {
    if (lot.plant === undefined) continue;
    const name = by === 'genus' ? genusOf(lot.plant) : lot.plant;
    const key = name.toLowerCase().replace(/\s+/g, ' ').trim();
    const group = groups.get(key) ?? { name, lots: [] };
    group.lots.push(lot);
    groups.set(key, group);
  }
  return new Map([...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, { name, lots: all }]) => [name, all]));
}
