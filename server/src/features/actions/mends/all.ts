/** What mends which problem. A new mend is a function of its own and a line here. */
import type { ProblemCode } from '../../../model/problems.ts';
import { countExceedsSown, moreThanGerminated, totalFalls } from './counts.ts';
import { countInFuture, missingDate, spokenDate } from './dates.ts';
import type { Mender } from './mend.ts';
import { duplicateDefinition, nearestBatches, unknownBatch } from './names.ts';
import { estimateIntoRemark, intoRemark } from './remarks.ts';
import { cutDoesNotAddUp, sownExceedsSeeds, splitExceedsSeeds } from './seeds.ts';
import { endBeforeStart, liftMissing, liftWithoutSoak, soakTooLong } from './soaks.ts';
import { impossibleDilution, stockOverdrawn } from './stocks.ts';
import { strengthMissing, unknownZone } from './words.ts';
import { afterClose, countBeforeSowing, drawBeforeMade, farAhead, sownBeforeCollected } from './years.ts';

export const menders: Readonly<Partial<Record<ProblemCode, readonly Mender[]>>> = {
  'sown-exceeds-seeds': [sownExceedsSeeds], 'split-exceeds-seeds': [splitExceedsSeeds],
  'cut-does-not-add-up': [cutDoesNotAddUp], 'count-exceeds-sown': [countExceedsSown], 'total-falls': [totalFalls],
  'more-than-germinated': [moreThanGerminated], 'total-as-new': [countExceedsSown], 'far-ahead': [farAhead],
  'lift-missing': [liftMissing], 'soak-too-long': [soakTooLong], 'end-before-start': [endBeforeStart],
  'lift-without-soak': [liftWithoutSoak],
  'missing-date': [missingDate], 'count-in-future': [countInFuture], 'count-before-sowing': [countBeforeSowing],
  'sown-before-collected': [sownBeforeCollected], 'draw-before-made': [drawBeforeMade], 'after-close': [afterClose],
  'duplicate-definition': [duplicateDefinition], 'unknown-batch': [unknownBatch, nearestBatches],
  'impossible-dilution': [impossibleDilution], 'stock-overdrawn': [stockOverdrawn],
  'unknown-zone': [unknownZone], 'strength-missing': [strengthMissing],
  'bad-date': [spokenDate], 'bad-value': [spokenDate], 'stray-text': [spokenDate, estimateIntoRemark, intoRemark],
  'unknown-fact': [estimateIntoRemark, intoRemark],
};
