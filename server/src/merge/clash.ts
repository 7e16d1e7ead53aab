/** Names that two records give, each of which came on one side alone: only one of them can stand. */
import { givenNames } from './identity.ts';
import type { Item } from './items.ts';
import type { Settled } from './settle.ts';
import type { Trio } from './trios.ts';

/** Of each such pair the records, ours and theirs. */
export interface Clash {
  readonly ours: Trio;
  readonly theirs: Trio;
}

/** What a version gave twice already is no matter of the merge. */
export function clashesOf(
  settled: ReadonlyMap<Trio, Settled>, ours: readonly Item[], theirs: readonly Item[],
): Clash[] {
  const givers = new Map<string, Trio[]>();
  for (const [trio, each] of settled) {
    if (!each || !('item' in each)) continue;
    for (const name of givenNames(each.item)) {
      const same = givers.get(name);
      if (same) same.push(trio);
      else givers.set(name, [trio]);
    }
  }
  const inOurs = namesOf(ours);
  const inTheirs = namesOf(theirs);
  const taken = new Set<Trio>();
  const clashes: Clash[] = [];
  for (const [name, trios] of givers) {
    if (trios.length < 2 || inOurs.get(name)! > 1 || inTheirs.get(name)! > 1) continue;
    const free = trios.filter(trio => !taken.has(trio));
    const mine = free.find(({ ours: item }) => item && givenNames(item).includes(name));
    const its = free.find(trio => trio !== mine && trio.theirs && givenNames(trio.theirs).includes(name));
    if (!mine || !its || agree(mine, its, name)) continue;
    taken.add(mine).add(its);
    clashes.push({ ours: mine, theirs: its });
  }
  return clashes;
}

function namesOf(items: readonly Item[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const name of items.flatMap(givenNames)) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

/** The same zone again does no harm. */
function agree(ours: Trio, theirs: Trio, name: string): boolean {
  return name === 'zone' && ours.ours!.reading!.record!.subject!.text === theirs.theirs!.reading!.record!.subject!.text;
}
