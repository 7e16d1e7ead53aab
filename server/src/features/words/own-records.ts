/** What the grower's own records say of a plant: how much germinated after each treatment, over all lots. */
import type { Journal } from '../../journal/journal.ts';
import { isUndefined } from '../../measures/measured.ts';
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
  const found = new Map<string, { germinated: number; seeds: number; batches: number; lots: Set<string> }>();
  const name = nameOf(plant);
  for (const lot of journal.lots()) {
    if (nameOf(lot.plant ?? '') !== name) continue;
    for (const batch of lot.batches.values()) {
      const share = germinatedOf(batch);
      if (isUndefined(share)) continue;
      const treatment = treatmentText(batch);
      const sum = found.get(treatment) ?? { germinated: 0, seeds: 0, batches: 0, lots: new Set<string>() };
      sum.germinated += share.x;
      sum.seeds += share.n;
      sum.batches++;
      found.set(treatment, sum);
      sum.lots.add(lot.id);
    }
  }
  return [...found].map(([treatment, { lots, ...sum }]) => ({ treatment, ...sum, lots: lots.size }));
}

function nameOf(plant: string): string {
  return plant.toLowerCase().trim().replaceAll(/\s+/g, ' ');
}
