/** What was done to the seed of a batch, in the fewest words: batches with the same words had the same treatment. */
import type { Batch, BatchEvent } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isTreatment } from '../model/events.ts';
import { dosesText, joinerOf, soakLengthText } from './soaks.ts';
import { stageText } from './stages.ts';
import { stepsText } from './steps.ts';

/**
 * Soaks, scarification and stages in the order of time, those before it was split off included. Stages of its regime
 * that nobody wrote down are among them, marked as planned, and as passed when their time
 * is over by now.
 *
 * Example: 'GA3 500 ppm 24 h, then 4 C 90 days (planned)'; 'untreated' where nothing was done.
 * What a line with an error says is not among them.
 */
export function treatmentText(batch: Pick<Batch, 'inherited' | 'events'> & Partial<Pick<Batch, 'unread'>>, now?: Moment): string {
  const texts = stepsText(batch, now?.day, stepOf);
  if (texts.length > 0) return texts.join(', then ');
  return batch.unread ? 'untreated (as far as can be read)' : 'untreated';
}

function stepOf(event: BatchEvent): string[] {
  if (!isTreatment(event)) return [];
  switch (event.type) {
    case 'soak': {
      const { doses } = event.soak;
      return [`${dosesText(doses)}${joinerOf(doses)}${soakLengthText(event.soak) ?? '(no end recorded)'}`];
    }
    case 'scarify': return ['scarified'];
    case 'stage': return [stageText(event.stage)];
    default: return event satisfies never;
  }
}
