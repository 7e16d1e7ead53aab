/** Which lots are of which plant: what to check again across lots when one of them was edited. */
import type { Lot } from '../journal/life.ts';
import { plantKey } from '../model/plant.ts';

export class PlantIndex {
  /** By plant and by id. */
  readonly #lots = new Map<string, Map<string, Lot>>();
  readonly #plantOf = new Map<string, string>();

  /** Takes over what a lot says now; undefined where it is no more. Gives the plants of which something changed. */
  follow(id: string, lot: Lot | undefined): string[] {
    const before = this.#plantOf.get(id);
    const now = lot?.plant === undefined ? undefined : plantKey(lot.plant);
    if (before !== undefined && (before === now && this.#lots.get(before)?.get(id) === lot)) return [];
    if (before !== undefined) this.#forget(id, before);
    if (lot && now !== undefined) {
      this.#plantOf.set(id, now);
      this.#lots.set(now, (this.#lots.get(now) ?? new Map<string, Lot>()).set(id, lot));
    }
    return [...new Set([before, now])].filter(plant => plant !== undefined);
  }

  /** All lots of a plant, in no order. */
  lotsOf(plant: string): Lot[] {
    return [...(this.#lots.get(plant)?.values() ?? [])];
  }

  #forget(id: string, plant: string): void {
    const lots = this.#lots.get(plant);
    lots?.delete(id);
    if (lots?.size === 0) this.#lots.delete(plant);
    this.#plantOf.delete(id);
  }
}
