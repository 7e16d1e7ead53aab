import type { Entry } from '../journal/life.ts';
import { missingBatches, parentOf } from '../journal/strays.ts';
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
  const paths = [...lot.batches.keys()];
  for (const [path, entries] of missingBatches(lot)) {
    const uses = entries.map(entry => [entry, namedIn(entry, path)] as const);
    const near = nearestPath(path, namesNear(path, paths));
    const suggestion = near ? `Did you mean “${near}”?` : known(lot.id, path, paths);
    for (const { entry, named, more } of onceAFile(uses)) {
      yield found(entry.line, 'unknown-batch', named, { id: path, more: usedBy(more), suggestion },
        { fixes: near ? [replacement(named, near)] : [] });
    }
  }
};

/** Where a record names a batch, or the seed that the batch it names would be of. */
function namedIn({ record }: Entry, path: string): Span {
  const { start } = record.subject!;
  return { start, end: start + path.length };
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
