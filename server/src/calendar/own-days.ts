/** What the grower's own records say of the days from germination to a first leaf. */
import { countsOf, type Batch } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import type { Day } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import { plannedStages } from './regimes.ts';

export interface OwnDays {
  /** Of the batches in which a first leaf was seen: the middle one, the quickest and the slowest. */
  readonly median: number;
  readonly least: number;
  readonly most: number;
  readonly batches: number;
  /** The plant's name, or its genus where the plant itself has no such records. */
  readonly of: string;
}

/**
 * Days to the count that first found a leaf, batch by batch: from the one that first found a seed germinated, or from
 * the end of the last stage before the leaf where that is later, since a plan counts on from its last stage. A leaf
 * that came within a stage came 0 days after it. Counts are some days apart, so each may be off by the days between two
 * of them. Undefined without such a batch.
 */
export function daysToLeaf(journal: Journal, plant: string): OwnDays | undefined {
  const name = plant.toLowerCase();
  const genus = genusOf(name);
  const all = [...journal.lots()].flatMap(lot => {
    const other = lot.plant?.toLowerCase() ?? '';
    if (genusOf(other) !== genus) return [];
    return [...lot.batches.values()].flatMap(batch => {
      const days = wait(batch);
      return days === undefined ? [] : [{ other, days }];
    });
  });
  const same = all.filter(({ other }) => other === name);
  if (same.length > 0) return summary(same.map(({ days }) => days), plant);
  return all.length > 0 ? summary(all.map(({ days }) => days), genusOf(plant)) : undefined;
}

function genusOf(plant: string): string {
  return plant.split(/\s/)[0]!;
}

function wait(batch: Batch): number | undefined {
  const counts = countsOf(batch);
  const germinated = counts.find(({ after }) => after.germinated > 0);
  const leaf = counts.find(({ after }) => after.leaf > 0);
  // Both seen first in one count: how long it took was not seen.
  if (germinated === undefined || leaf === undefined || leaf === germinated) return undefined;
  const seen = leaf.entry.moment.day;
  return seen - Math.max(germinated.entry.moment.day, lastStageEnd(batch, seen));
}

/** The end of the last stage that had begun by a day, that day at most; -Infinity without one. */
function lastStageEnd({ inherited, events, stages }: Batch, day: Day): Day {
  const written = stages.map(({ start, planned, end }) =>
    ({ start: start.day, end: end?.day ?? (planned ? dayAfter(start.day, planned) : undefined) }));
  const last = [...written, ...plannedStages([...inherited, ...events])]
    .filter(({ start }) => start <= day).reduce((latest, { end }) => Math.max(latest, end ?? day), -Infinity);
  return Math.min(last, day);
}

function summary(days: readonly number[], of: string): OwnDays {
  const sorted = days.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const median = (sorted[Math.ceil(middle) - 1]! + sorted[Math.floor(middle)]!) / 2;
  return { median, least: sorted[0]!, most: sorted.at(-1)!, batches: sorted.length, of };
}
