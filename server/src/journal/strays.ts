/** Records of a lot that name a batch which no `split` gives out. */
import type { Entry, Lot } from './life.ts';

/**
 * By the path that is missing: of `A/1` where there is no `A`, that is `A`. A path is not among them that
 * a `split` with an error may give out.
 */
export function missingBatches(lot: Lot): ReadonlyMap<string, readonly Entry[]> {
  const missing = new Map<string, Entry[]>();
  for (const entry of lot.strays) {
    const { subject } = entry.record;
    if (!subject || isDoubtful(lot, subject.text)) continue;
    const path = firstMissing(lot, subject.text);
    const same = missing.get(path);
    if (same) same.push(entry);
    else missing.set(path, [entry]);
  }
  return missing;
}

function firstMissing({ batches }: Lot, path: string): string {
  let missing = path;
  while (!batches.has(parentOf(missing))) missing = parentOf(missing);
  return missing;
}

export function parentOf(path: string): string {
  return path.slice(0, path.lastIndexOf('/'));
}

function isDoubtful({ batches }: Lot, path: string): boolean {
  let parent = parentOf(path);
  while (!batches.has(parent)) parent = parentOf(parent);
  return batches.get(parent)?.events.some(({ type, entry }) => type === 'split' && entry.record.broken) === true;
}
