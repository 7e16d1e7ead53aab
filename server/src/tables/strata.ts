import type { Lot } from '../journal/life.ts';
import type { Comparison } from '../measures/comparison.ts';
import { isUndefined } from '../measures/measured.ts';
import type { Day } from '../model/day.ts';
import { winterOf } from '../model/winter.ts';
import { plantTrial, type Stratum } from '../trials/plant-trial.ts';
import { pathsOf, sideColumns } from './comparisons.ts';
import { plantColumns } from './lots.ts';
import { lotsOf } from './source.ts';
import { table, text, whole } from './table.ts';

interface StratumRow {
  readonly lot: Lot;
  readonly agent: string;
  /** From 1. */
  readonly number: number;
  readonly stratum: Stratum;
  readonly comparison: Comparison | undefined;
}

/** What `report --by species` puts together. */
export const strata = table<StratumRow>(
  {
    name: 'strata',
    says: 'A row for each lot and each agent that was tried alone on it, in all its doses, beside untreated seed under the same conditions. These are the strata that the report by species puts together.',
    key: ['lot', 'agent', 'stratum'], references: [{ columns: ['journal', 'lot'], table: 'lots' }],
  },
  [
    text('lot', 'The id of the lot.', ({ lot }) => lot.id),
    text('agent', 'The agent.', ({ agent }) => agent),
    whole('stratum', 'Its number among those of the lot and the agent, from 1: a lot that was tried under several conditions has several.', each => each.number),
    ...plantColumns<StratumRow>(({ lot }) => lot.plant),
    text('winter', 'The winter of day 0 of the untreated seed: 2025/26 north of the equator, from July to June; the year south of it, by the zone of the journal.', ({ lot, stratum: { pairs } }) => (
      winterOf(pairs[0]!.untreated.batches[0]!.conditions.dayZero, lot.zone))),
    text('treated_batches', 'The treated batches, with a blank between them.', ({ stratum: { pairs } }) => pairs.map(({ treated }) => pathsOf(treated)).join(' ')),
    text('untreated_batches', 'The untreated batches.', ({ stratum: { pairs } }) => pathsOf(pairs[0]!.untreated)),
    ...sideColumns<StratumRow>(({ comparison }) => comparison, ({ stratum: { pairs } }) => pairs[0]!.treated),
  ],
  source => lotsOf(source).flatMap(lot => strataOf(lot, source.now.day)),
);

/** A lot without a plant is put together with no other. */
function strataOf(lot: Lot, today: Day): StratumRow[] {
  if (lot.plant === undefined) return [];
  const { agents } = plantTrial(lot.plant, [lot], today);
  return agents.flatMap(({ agent, strata: found, across }) => found.map((stratum, i) => {
    const comparison = across.comparisons[i]!;
    const known = isUndefined(comparison) ? undefined : comparison;
    return { lot, agent: agent.word, number: i + 1, stratum, comparison: known };
  }));
}
