/** Lots of one species or one genus. */
import type { Lot } from '../journal/life.ts';
import { genusIn, plantKey, type PlantRank } from '../model/plant.ts';

/** Lots put together by species or by genus, in the order of their names; those without a plant are left out. */
export function byPlant(lots: Iterable<Lot>, by: PlantRank): Map<string, Lot[]> {
  const groups = new Map<string, { name: string; lots: Lot[] }>();
  for (const lot of lots) {
    if (lot.plant === undefined) continue;
    const name = by === 'genus' ? genusIn(lot.plant) : lot.plant;
    const group = groups.get(plantKey(name)) ?? { name, lots: [] };
    group.lots.push(lot);
    groups.set(plantKey(name), group);
  }
  return new Map([...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, { name, lots: all }]) => [name, all]));
}
