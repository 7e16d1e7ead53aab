/** Batches of a lot that began together, so that they may be compared. */
import type { Batch, Lot } from '../journal/life.ts';

/**
 * Sowing more days apart than this is a difference of its own; a soak puts the treated part a day or two later. Common
 * practice, no source.
 */
export const SAME_SOWING_DAYS = 3;

/** A batch, and the others of its lot whose day 0 lies with its own. */
export function togetherWith(batch: Batch, lot: Lot): Batch[] {
  const day = batch.origin?.moment.day;
  return [...lot.batches.values()].filter(other => other === batch || (
    day !== undefined && other.origin && Math.abs(other.origin.moment.day - day) <= SAME_SOWING_DAYS));
}
