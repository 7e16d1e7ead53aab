/** Which packet of seed took the place of which. */
import { factsOf } from '../model/record.ts';
import type { Journal } from './journal.ts';
import type { Entry } from './life.ts';

export interface Replacing {
  /** Older lots, as the record of the lot names them. */
  readonly replaces: readonly string[];
  /** Newer lots that name this one, in the order of the journal. */
  readonly replacedBy: readonly string[];
}

export function replacingOf(journal: Journal, id: string): Replacing {
  return { replaces: olderOf(journal, id), replacedBy: newerOf(journal, id) };
}

/** Of the records that name a lot; the journal keeps them until one changes. An outline asks for each of them. */
const newer = new WeakMap<readonly Entry[], readonly string[]>();

function newerOf(journal: Journal, id: string): readonly string[] {
  const mentions = journal.mentionsOf(id);
  const known = newer.get(mentions);
  if (known) return known;
  const found = new Set(mentions.flatMap(({ record }) => {
    const isNewer = record.keyword === 'lot' && factsOf(record, 'replaces').some(({ value }) => value.text === id);
    return isNewer && record.subject ? [record.subject.text] : [];
  }));
  newer.set(mentions, [...found]);
  return [...found];
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
  if (endsFrom(journal, named)) return undefined;
  const cameFrom = new Map<string, string | undefined>([[named, undefined]]);
  // A map is gone through in the order in which it grows.
  for (const id of cameFrom.keys()) {
    if (id === lot) return wayTo(lot, cameFrom);
    for (const next of olderOf(journal, id)) if (!cameFrom.has(next)) cameFrom.set(next, id);
  }
  return undefined;
}

function wayTo(lot: string, cameFrom: ReadonlyMap<string, string | undefined>): string[] {
  const way: string[] = [];
  for (let id: string | undefined = lot; id !== undefined; id = cameFrom.get(id)) way.unshift(id);
  return way;
}

interface Ends {
  readonly revision: number;
  readonly ids: Set<string>;
}

/** Lots from which every way ends. Each lot of a long row asks about all that are older. */
const ends = new WeakMap<Journal, Ends>();

/** Whether no way from a lot to older ones leads round in a circle. */
function endsFrom(journal: Journal, from: string): boolean {
  let known = ends.get(journal);
  if (known?.revision !== journal.revision) ends.set(journal, known = { revision: journal.revision, ids: new Set() });
  const { ids } = known;
  const way = new Map([[from, olderOf(journal, from)]]);
  const row = [from];
  for (let id = row.at(-1); id !== undefined; id = row.at(-1)) {
    const next = way.get(id)!.pop();
    if (next === undefined) {
      ids.add(id);
      way.delete(id);
      row.pop();
    } else if (way.has(next)) return false;
    else if (!ids.has(next)) {
      way.set(next, olderOf(journal, next));
      row.push(next);
    }
  }
  return true;
}
