/** Seed that was divided, and what was found of it before. */
import { countsOf, type Batch, type Totals } from './life.ts';

/** All seeds of a batch were given out to others. */
export function isGivenOut({ children, kept }: Pick<Batch, 'children' | 'kept'>): boolean {
  return children.length > 0 && kept === 0;
}

/** Seed was seen to germinate or rot; what was lost is no sign of either. */
export function hasGrown({ germinated, rotted }: Totals): boolean {
  return germinated + rotted > 0;
}

/**
 * A batch that is told by its parts alone: it was given out whole and never counted, or gave out, before any had
 * germinated or rotted, all that was not lost. What its counts found, they found of the seed of its parts.
 */
export function isToldByParts(batch: Batch): boolean {
  const { children, kept, totals, events } = batch;
  if (isGivenOut(batch) && countsOf(batch).length === 0) return true;
  return children.length > 0 && kept === totals.lost && !hasGrown(totals) && !events.some(({ type }) => type === 'gone');
}

/**
 * A batch that gave out whole what was not lost or rotted, before any had germinated: a trial knows it by its parts,
 * which have their share of the rotted seed.
 */
export function isDividedWhole(batch: Batch): boolean {
  const { children, kept, totals: { germinated, rotted, lost }, events } = batch;
  return isToldByParts(batch)
    || (children.length > 0 && kept === lost + rotted && germinated === 0 && !events.some(({ type }) => type === 'gone'));
}
