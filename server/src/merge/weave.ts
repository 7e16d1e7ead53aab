/** One row of items from both sides: in the order that a side gave them, and what is new on both by time. */
import { dayNameOf } from './identity.ts';
import type { Item } from './items.ts';
import { byTime, type Direction } from './runs.ts';
import type { Trio, Trios } from './trios.ts';

/**
 * All items of both sides, each once. They stand in the order of ours; in that of theirs where only theirs is another
 * than the one that both began with. What the other side added stands behind the item that it stood behind there.
 */
export function woven(trios: Trios): Trio[] {
  const takesTheirs = !isReordered(trios.base, trios.ours) && isReordered(trios.base, trios.theirs);
  const [first, second] = takesTheirs ? [trios.theirs, trios.ours] : [trios.ours, trios.theirs];
  const isOfFirst = new Set(first);
  const isOfSecond = new Set(second);
  const runs = runsAfter(second, isOfFirst);
  const direction = directionOf(trios);
  const itemOf = ({ ours, theirs }: Trio): Item => (takesTheirs ? theirs ?? ours : ours ?? theirs)!;
  const all: Trio[] = [];
  let own: Trio[] = [];
  let anchor: Trio | undefined;
  const flush = (next: Trio | undefined) => {
    const other = runs.get(anchor) ?? [];
    const [mine, its] = takesTheirs ? [other, own] : [own, other];
    for (const each of byTime(mine, its, next && itemOf(next), itemOf, direction)) all.push(each);
    own = [];
  };
  for (const trio of first) {
    if (!isOfSecond.has(trio)) {
      own.push(trio);
      continue;
    }
    flush(trio);
    all.push(trio);
    anchor = trio;
  }
  flush(undefined);
  return all;
}

/** Whether what both began with stands in another order now. */
function isReordered(base: readonly Trio[], side: readonly Trio[]): boolean {
  const numbers = new Map(base.map((trio, n) => [trio, n]));
  let last = -1;
  for (const trio of side) {
    const number = numbers.get(trio);
    if (number === undefined) continue;
    if (number < last) return true;
    last = number;
  }
  return false;
}

/** What one side alone has, by the shared item above it; undefined stands for the start of the file. */
function runsAfter(side: readonly Trio[], isShared: ReadonlySet<Trio>): Map<Trio | undefined, Trio[]> {
  const runs = new Map<Trio | undefined, Trio[]>();
  let anchor: Trio | undefined;
  let run: Trio[] | undefined;
  for (const trio of side) {
    if (isShared.has(trio)) {
      anchor = trio;
      run = undefined;
      continue;
    }
    if (!run) runs.set(anchor, run = []);
    run.push(trio);
  }
  return runs;
}

/** Most journals go on below; in some the newest stands on top. */
function directionOf({ base, ours, theirs }: Trios): Direction {
  let down = 0;
  let last = '';
  for (const { base: b, ours: o, theirs: t } of base.length > 1 ? base : [...ours, ...theirs]) {
    const item = (b ?? o ?? t)!;
    const day = item.kind === 'record' ? dayNameOf(item) : '';
    if (day === '') continue;
    if (last !== '' && day !== last) down += day < last ? 1 : -1;
    last = day;
  }
  return down > 0 ? 'newest first' : 'oldest first';
}
