/** Which batches of a lot are over. */
import { isGivenOut } from '../journal/given-out.ts';
import type { Lot } from '../journal/life.ts';

const memo = new WeakMap<Lot, ReadonlySet<string>>();

/** The batches that are closed, or given out to batches that all are. */
export function closedPaths(lot: Lot): ReadonlySet<string> {
  const known = memo.get(lot);
  if (known) return known;
  const paths = new Set<string>();
  // Each batch comes before its children.
  for (const batch of [...lot.batches.values()].reverse()) {
    const isOver = batch.closed !== undefined || isGivenOut(batch);
    if (isOver && batch.children.every(({ path }) => paths.has(path))) paths.add(batch.path);
  }
  memo.set(lot, paths);
  return paths;
}
