/** What the grower's own records say of a plant: how much germinated after each treatment, over all lots. */
import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import { isUndefined } from '../measures/measured.ts';
import { germinatedOf } from './germination.ts';
import { treatmentText } from './treatment.ts';

export interface OwnRecord {
  readonly treatment: string;
  /** Of all batches so treated that were counted. */
  readonly germinated: number;
  /** Seeds tested, less those lost. */
  readonly seeds: number;
  readonly batches: number;
  readonly lots: number;
}

/** In the order in which the treatments first stand in the journal. */
export function ownRecords(journal: Journal, plant: string): OwnRecord[] {
  const found = new Map<string, OwnRecord>();
  const name = nameOf(plant);
  const begins = plant.slice(0, 3).toLowerCase();
  for (const lot of journal.lots()) {
    // Most lots are of other plants, which the first letters tell.
    if (lot.plant?.slice(0, 3).toLowerCase() !== begins || nameOf(lot.plant) !== name) continue;
    const here = new Set<string>();
    for (const { treatment, x, n } of countedIn(lot)) {
      const sum = found.get(treatment) ?? { treatment, germinated: 0, seeds: 0, batches: 0, lots: 0 };
      found.set(treatment, {
        treatment, germinated: sum.germinated + x, seeds: sum.seeds + n, batches: sum.batches + 1,
        lots: sum.lots + (here.has(treatment) ? 0 : 1),
      });
      here.add(treatment);
    }
  }
  return [...found.values()];
}

interface Counted {
  readonly x: number;
  readonly n: number;
  readonly treatment: string;
}

/** A lot is read anew when one of its records changes, and then is another object. */
const known = new WeakMap<Lot, readonly Counted[]>();

function countedIn(lot: Lot): readonly Counted[] {
  const before = known.get(lot);
  if (before) return before;
  const counted = [...lot.batches.values()].flatMap(batch => {
    const share = germinatedOf(batch);
    // What was only estimated has no place in a sum of seeds.
    if (isUndefined(share) || typeof share.n !== 'number') return [];
    return [{ x: share.x, n: share.n, treatment: treatmentText(batch) }];
  });
  known.set(lot, counted);
  return counted;
}

function nameOf(plant: string): string {
  return plant.toLowerCase().trim().replaceAll(/\s+/g, ' ');
}
