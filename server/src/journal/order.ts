/** The order of time. */
import type { DatedEntry, Entry } from './life.ts';

const beforeEverything = { day: -Infinity, minutes: 0 };

/**
 * Of records of one day, one without a time of day follows the record that stands before it in the file: a diary is
 * written in the order in which things are done. A `split` without a date comes before everything; other records
 * without one are left out. `entries` are in the order of the journal.
 */
export function inOrder(entries: readonly Entry[]): DatedEntry[] {
  const dated: DatedEntry[] = [];
  for (const entry of entries) {
    if (entry.moment) dated.push(entry as DatedEntry);
    else if (entry.record.keyword === 'split') dated.push({ ...entry, moment: beforeEverything });
  }
  // Most journals are written in the order of time, and sorting takes longer than looking.
  if (isSorted(dated.map(({ moment }) => moment.day))) {
    const minutes = minutesOf(dated);
    if (isSorted(minutes.map((each, n) => dated[n]!.moment.day * 1440 + each))) return dated;
  }
  // Sorting is stable, so within a day they stay in the order of the journal.
  dated.sort((a, b) => a.moment.day - b.moment.day);
  const minutes = new Map(minutesOf(dated).map((each, n) => [dated[n]!, each]));
  return dated.sort((a, b) => a.moment.day - b.moment.day || minutes.get(a)! - minutes.get(b)!);
}

/** The times of day; where none is written, that of the record before on the same day. */
function minutesOf(dated: readonly DatedEntry[]): number[] {
  let last = { day: NaN, minutes: 0 };
  return dated.map(({ moment: { day, minutes } }) => {
    last = { day, minutes: minutes ?? (last.day === day ? last.minutes : 0) };
    return last.minutes;
  });
}

function isSorted(numbers: readonly number[]): boolean {
  return numbers.every((number, n) => n === 0 || numbers[n - 1]! <= number);
}
