import type { Lot } from '../journal/life.ts';
import { listed, nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type LotCheck } from './check.ts';

/** So many batches are worth naming. */
const MOST = 8;

/** Records of batches that were never split off. */
export const unknownBatch: LotCheck = function* (lot) {
  for (const { line, record: { subject } } of lot.strays) {
    // A `split` that could not be read may have named it.
    if (!subject || isDoubtful(lot, subject.text)) continue;
    const near = nearestPath(subject.text, [...lot.batches.keys()]);
    yield found(line, 'unknown-batch', subject, { id: subject.text, suggestion: near ? `Did you mean “${near}”?` : known(lot) },
      { fixes: near ? [replacement(subject, near)] : [] });
  }
};

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

function known({ id, batches }: Lot): string {
  const names = [...batches.keys()].slice(1);
  if (names.length === 0) return `Write a “split” record first: split ${id}, A 24 seeds.`;
  return `${id} was split into ${listed(names.length > MOST ? [...names.slice(0, MOST), 'others'] : names, 'and')}.`;
}
