/** What a picture of germination says of batches that it cannot draw. */
import type { LeftOut } from '../../trials/groups.ts';

/** Batches without a curve that are named; the others are counted. */
const MOST_NAMED = 3;

/** Batches that something was done to and that have no curve, with the reason; '' if there are none. */
export function missingText(missing: readonly LeftOut[]): string {
  if (missing.length === 0) return '';
  const named = missing.slice(0, MOST_NAMED).map(({ batch, why }) => `${batch.path} (${why.undefined})`);
  const more = missing.length - named.length;
  return `No curve: ${[...named, ...more > 0 ? [`${more} more`] : []].join(', ')}.`;
}
