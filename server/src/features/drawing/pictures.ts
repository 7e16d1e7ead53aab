/** The pictures of things of the journal. */
import type { Batch } from '../../journal/life.ts';
import { germinationPicture } from '../../pictures/germination/picture.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import type { LotTrial } from '../../trials/lot-trial.ts';
import { batchGermination, lotGermination } from './germination.ts';

/** Undefined where no batch was counted, or none of them on days that are known. */
export function lotPicture(trial: LotTrial, frame: Frame): Picture | undefined {
  const values = lotGermination(trial);
  return values && germinationPicture(values, frame);
}

export function batchPicture(batch: Batch, trial: LotTrial, frame: Frame): Picture | undefined {
  const values = batchGermination(batch, trial);
  return values && germinationPicture(values, frame);
}
