/** What run.mjs pools, bundled for it. */
import { mantelHaenszel, type Stratum } from '../../server/src/measures/mantel-haenszel.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { SEEDS, strataOf, type World } from './world.ts';

export { poolingSql, selectOf, strataSql } from './world.ts';

export interface Pooled {
  readonly species: string;
  readonly odds: number;
  readonly chiSquare: number;
}

/** By the measure of the report, without any table. */
export function pooled(world: World): Pooled[] {
  const bySpecies = new Map<string, Stratum[]>();
  for (const { species, treated, untreated } of strataOf(world)) {
    const strata = bySpecies.get(species) ?? [];
    strata.push({ first: { x: treated, n: SEEDS }, second: { x: untreated, n: SEEDS } });
    bySpecies.set(species, strata);
  }
  return [...bySpecies].flatMap(([species, strata]) => {
    const found = mantelHaenszel(strata);
    if (isUndefined(found) || isUndefined(found.oddsRatio)) return [];
    return [{ species, odds: found.oddsRatio.value, chiSquare: found.corrected.chiSquare }];
  });
}
