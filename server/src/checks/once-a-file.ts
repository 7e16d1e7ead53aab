/** A name that nothing defines is one mistake, however many records use it. */
import type { Entry } from '../journal/life.ts';

export interface Use<Named> {
  readonly entry: Entry;
  readonly named: Named;
  /** How many other records of the same file use the name. */
  readonly more: number;
}

/** The first use of a name in each file, in the order of the uses; `named` is what to mark there. */
export function onceAFile<Named>(uses: Iterable<readonly [Entry, Named]>): Use<Named>[] {
  const files = new Map<string, { readonly entry: Entry; readonly named: Named; readonly lines: Set<Entry['line']> }>();
  for (const [entry, named] of uses) {
    const { name } = entry.line.store;
    const first = files.get(name);
    if (first) first.lines.add(entry.line);
    else files.set(name, { entry, named, lines: new Set([entry.line]) });
  }
  return [...files.values()].map(({ entry, named, lines }) => ({ entry, named, more: lines.size - 1 }));
}

/** The end of a sentence about a name: how many more records use it. */
export function usedBy(more: number): string {
  if (more === 0) return '';
  return more === 1 ? '; one more record in this file uses it' : `; ${more} more records in this file use it`;
}
