import type { Entry, Lot } from '../journal/life.ts';
import type { Span } from '../model/record.ts';
import { listed, nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type LotCheck } from './check.ts';
import { namesNear } from './near-names.ts';
import { onceAFile, usedBy } from './once-a-file.ts';

/** So many batches are worth naming. */
const MOST = 8;

/** Batches that were never split off, each where a file first names it. */
export const unknownBatch: LotCheck = function* (lot) {
  const missing = new Map<string, (readonly [Entry, Span])[]>();
  for (const entry of lot.strays) {
    const { subject } = entry.record;
    // A `split` that could not be read may have named it.
    if (!subject || isDoubtful(lot, subject.text)) continue;
    const path = firstMissing(lot, subject.text);
    const uses = missing.get(path) ?? [];
    missing.set(path, uses);
    uses.push([entry, { start: subject.start, end: subject.start + path.length }]);
  }
  const paths = [...lot.batches.keys()];
  for (const [path, uses] of missing) {
    const near = nearestPath(path, namesNear(path, paths));
    const suggestion = near ? `Did you mean “${near}”?` : known(lot.id, path, paths);
    for (const { entry, named, more } of onceAFile(uses)) {
      yield found(entry.line, 'unknown-batch', named, { id: path, more: usedBy(more), suggestion },
        { fixes: near ? [replacement(named, near)] : [] });
    }
  }
};

/** Of `A/1` where there is no `A`, that is what is missing. */
function firstMissing({ batches }: Lot, path: string): string {
  let missing = path;
  while (!batches.has(parentOf(missing))) missing = parentOf(missing);
  return missing;
}

function parentOf(path: string): string {
  return path.slice(0, path.lastIndexOf('/'));
}

function isDoubtful({ batches }: Lot, path: string): boolean {
  let parent = parentOf(path);
  while (!batches.has(parent)) parent = parentOf(parent);
  return batches.get(parent)?.events.some(({ type, entry }) => type === 'split' && entry.record.broken) === true;
}

/** Of names as short as `A` and `B`, one is not a slip of the other: only another case is. */
function nearestPath(path: string, paths: readonly string[]): string | undefined {
  const lower = path.toLowerCase();
  const sameButCase = paths.find(other => other.toLowerCase() === lower);
  const name = path.slice(path.lastIndexOf('/') + 1);
  if (sameButCase !== undefined || name.length < 3) return sameButCase;
  return nearest(path, paths.filter(other => parentOf(other) === parentOf(path)));
}

function known(id: string, path: string, paths: readonly string[]): string {
  const parts = paths.slice(1, MOST + 2);
  if (parts.length === 0) return `Write how ${id} was split, such as: split ${id}, ${path.slice(id.length + 1)} 24 seeds.`;
  return `${id} was split into ${listed(parts.length > MOST ? [...parts.slice(0, MOST), 'others'] : parts, 'and')}.`;
}
