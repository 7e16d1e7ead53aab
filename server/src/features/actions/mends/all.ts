/** What mends which problem. A new mend is a function of its own and a line here. */
import type { ProblemCode } from '../../../model/problems.ts';
import { countExceedsSown, totalFalls } from './counts.ts';
import { countInFuture, missingDate } from './dates.ts';
import type { Mender } from './mend.ts';
import { duplicateDefinition, unknownBatch } from './names.ts';
import { cutDoesNotAddUp, sownExceedsSeeds, splitExceedsSeeds } from './seeds.ts';
import { endBeforeStart, liftMissing, soakTooLong } from './soaks.ts';
import { strengthMissing, unknownZone } from './words.ts';

export const menders: Readonly<Partial<Record<ProblemCode, Mender>>> = {
  'sown-exceeds-seeds': sownExceedsSeeds, 'split-exceeds-seeds': splitExceedsSeeds,
  'cut-does-not-add-up': cutDoesNotAddUp, 'count-exceeds-sown': countExceedsSown, 'total-falls': totalFalls,
  'lift-missing': liftMissing, 'soak-too-long': soakTooLong, 'end-before-start': endBeforeStart,
  'missing-date': missingDate, 'count-in-future': countInFuture,
  'duplicate-definition': duplicateDefinition, 'unknown-batch': unknownBatch,
  'unknown-zone': unknownZone, 'strength-missing': strengthMissing,
};
