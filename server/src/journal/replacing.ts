/** Which packet of seed took the place of which. */
import { factsOf } from '../model/record.ts';
import type { Journal } from './journal.ts';

export interface Replacing {
  /** Older lots, as the record of the lot names them. */
  readonly replaces: readonly string[];
  /** Newer lots that name this one, in the order of the journal. */
  readonly replacedBy: readonly string[];
}

export function replacingOf(journal: Journal, id: string): Replacing {
  const newer = journal.mentionsOf(id).flatMap(({ record }) => {
    const isNewer = record.keyword === 'lot' && factsOf(record, 'replaces').some(({ value }) => value.text === id);
    return isNewer && record.subject ? [record.subject.text] : [];
  });
  return { replaces: olderOf(journal, id), replacedBy: [...new Set(newer)] };
}

function olderOf(journal: Journal, id: string): string[] {
  const lot = journal.lot(id);
  return lot ? factsOf(lot.definition.record, 'replaces').map(({ value }) => value.text) : [];
}

/**
 * The lots by way of which one replaces itself, from one that it names to itself; undefined where it does not.
 *
 * Example: where A replaces B, B replaces C and C replaces A, circleFrom(journal, 'A', 'B') is ['B', 'C', 'A']
 */
export function circleFrom(journal: Journal, lot: string, named: string): readonly string[] | undefined {
  const ways = new Map<string, readonly string[]>([[named, [named]]]);
  // A map is gone through in the order in which it grows.
  for (const [id, way] of ways) {
    if (id === lot) return way;
    for (const next of olderOf(journal, id)) if (!ways.has(next)) ways.set(next, [...way, next]);
  }
  return undefined;
}
