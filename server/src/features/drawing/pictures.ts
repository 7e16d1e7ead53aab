/** The pictures of things of the journal. */
import type { Batch, Lot } from '../../journal/life.ts';
import { germinationPicture } from '../../pictures/germination/picture.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { batchGermination, lotGermination } from './germination.ts';

/** Undefined where no batch was counted, or none of them on days that are known. */
export function lotPicture(lot: Lot, frame: Frame): Picture | undefined {
  const values = lotGermination(lot);
  return values && germinationPicture(values, frame);
}

export function batchPicture(batch: Batch, lot: Lot, frame: Frame): Picture | undefined {
  const values = batchGermination(batch, lot);
  return values && germinationPicture(values, frame);
}
