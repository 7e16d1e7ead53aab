/** What was done to the seed of a batch, in the fewest words: batches with the same words had the same treatment. */
import type { Batch } from '../../journal/life.ts';
import { dosesText, joinerOf, soakLengthText } from './soaks.ts';
import { stageText } from './stages.ts';

/**
 * Soaks, scarification and stages in the order of time, those before it was split off included.
 *
 * Example: 'GA3 500 ppm 24 h, then 4 C 90 days'; 'untreated' where nothing was done
 */
export function treatmentText({ inherited, events }: Pick<Batch, 'inherited' | 'events'>): string {
  const steps = [...inherited, ...events].flatMap(event => {
    switch (event.type) {
      case 'soak': {
        const { doses } = event.soak;
        return [`${dosesText(doses)}${joinerOf(doses)}${soakLengthText(event.soak) ?? '(no end recorded)'}`];
      }
      case 'scarify': return ['scarified'];
      case 'stage': return [stageText(event.stage)];
      case 'split': case 'lift': case 'sow': case 'move': case 'apply': case 'count': case 'cut': case 'pot': case 'discard':
      case 'note': case 'photo': case 'due': case 'misplaced': case 'blank':
        return [];
      default: return event satisfies never;
    }
  });
  return steps.length === 0 ? 'untreated' : steps.join(', then ');
}
