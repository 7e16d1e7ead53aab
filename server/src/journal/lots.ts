/** Lots picked out of those of a journal. */
import { plantKey } from '../model/plant.ts';
import { inOrderOf } from './journal-file.ts';
import type { Lot } from './life.ts';

export function lotsInOrder(lots: Iterable<Lot>): Lot[] {
  return inOrderOf(lots, ({ definition }) => definition.line);
}

/** Those whose plant has this name, however it is spelt; in the order in which they come. */
export function lotsOfPlant(lots: Iterable<Lot>, plant: string): Lot[] {
  const key = plantKey(plant);
  return [...lots].filter(lot => lot.plant !== undefined && plantKey(lot.plant) === key);
}
