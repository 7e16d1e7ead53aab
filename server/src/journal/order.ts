/** The order of time. */
import type { DatedEntry, Entry } from './life.ts';

/**
 * Of records of one day, one without a time of day follows the record that stands before it in the file: a diary is
 * written in the order in which things are done. A `split` without a date comes before everything; other records
 * without one are left out. `entries` are in the order of the journal.
 */
export function inOrder(entries: readonly Entry[]): DatedEntry[] {
  const dated: { entry: DatedEntry; minutes: number }[] = [];
  for (const entry of entries) {
    const moment = entry.moment ?? (entry.record.keyword === 'split' ? beforeEverything : undefined);
    if (moment) dated.push({ entry: entry.moment ? entry as DatedEntry : { ...entry, moment }, minutes: 0 });
  }
  // Sorting is stable, so within a day they stay in the order of the journal.
  dated.sort((a, b) => a.entry.moment.day - b.entry.moment.day);
  let last = { day: NaN, minutes: 0 };
  for (const item of dated) {
    const { day, minutes } = item.entry.moment;
    last = { day, minutes: minutes ?? (last.day === day ? last.minutes : 0) };
    item.minutes = last.minutes;
  }
  dated.sort((a, b) => a.entry.moment.day - b.entry.moment.day || a.minutes - b.minutes);
  return dated.map(({ entry }) => entry);
}

const beforeEverything = { day: -Infinity, minutes: 0 };
