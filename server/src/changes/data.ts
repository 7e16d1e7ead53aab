/** What changed, as plain data for other programs; syntaxes/json.md describes the shape. */
import { isUndefined } from '../measures/measured.ts';
import { seedRange } from '../words/shares.ts';
import type { Change, ShareChange } from './changes.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const CHANGES_SHAPE = 1;

export function changeData({ about, records, share, words }: Change): object {
  return {
    about: about === '' ? null : about,
    records: records.map(({ kind, keyword, day, words: own }) => (
      { change: kind, record: keyword ?? null, day: day === '' ? null : day, words: own })),
    germinated: share ? { before: shareData(share.before), after: shareData(share.after) } : null,
    words,
  };
}

function shareData(share: ShareChange['before']): object | null {
  if (share === undefined || isUndefined(share)) return share ?? null;
  const { least, most } = seedRange(share.n);
  return { count: share.x, ofLeast: least, ofMost: most, basis: share.of };
}
