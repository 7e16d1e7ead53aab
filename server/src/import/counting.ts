/** Whether the numbers of a sheet are what was new each time, or the total so far. */
import type { Day } from '../model/day.ts';
import type { Counting } from './answers.ts';

/** What was counted in a batch on a day. */
export interface Counted {
  readonly path: string;
  readonly what: string;
  readonly day: Day;
  readonly n: number;
}

export interface CountingKnown {
  /** Seeds of a batch; undefined where nobody counted them. */
  readonly seedsOf: (path: string) => number | undefined;
  /** Whether the journal already has counts of a batch on another day. */
  readonly hasOthers: (path: string, day: Day) => boolean;
}

/**
 * What the numbers show: a total cannot fall, and new seeds cannot add up to more than there are. Where each batch has
 * one number above 0, its last, both are the same. Undefined where they may be either, or contradict each other.
 */
export function countingShown(all: readonly Counted[], { seedsOf, hasOthers }: CountingKnown): Counting | undefined {
  const series = new Map<string, Counted[]>();
  for (const each of all) {
    const key = `${each.path}\n${each.what}`;
    series.set(key, [...(series.get(key) ?? []), each]);
  }
  const shown = new Set<Counting>();
  let isOpen = false;
  for (const counts of series.values()) {
    const sorted = counts.toSorted((a, b) => a.day - b.day);
    const sum = sorted.reduce((total, { n }) => total + n, 0);
    const { path, day } = sorted[0]!;
    if (sorted.some(({ n }, i) => i > 0 && n < sorted[i - 1]!.n)) shown.add('new');
    else if (sum > (seedsOf(path) ?? Infinity) && sum > sorted.at(-1)!.n) shown.add('total');
    else if (sum > sorted.at(-1)!.n || (sum > 0 && hasOthers(path, day))) isOpen = true;
  }
  const [only] = shown;
  return shown.size === 1 ? only : shown.size === 0 && !isOpen ? 'new' : undefined;
}
