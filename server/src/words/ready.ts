/** Untreated seed that came up well and soon, in words. */
import type { BatchEvent } from '../journal/life.ts';
import { percent, wholePercent } from '../measures/verdict-words.ts';
import type { ReadyRecord } from '../trials/ready.ts';
import { treatmentText } from './treatment.ts';
import { groupNames } from './trials.ts';

/**
 * Example: '18 of 20 untreated seeds germinated (90 %, 95 % interval 70 to 97) in B, half of the seed by day 12.'
 */
export function readyText({ group, readiness: { x, n, halfBy, interval } }: ReadyRecord): string {
  return `${x} of ${n} untreated seeds germinated (${percent(x / n)}, 95 % interval ${wholePercent(interval.low)} to ${wholePercent(interval.high)}) in ${groupNames(group)}, half of the seed by day ${halfBy}.`;
}

/**
 * What such seed had before it germinated, beside its soaks; undefined where that was nothing.
 *
 * Example: '4 C 12 weeks', 'scarification, then 4 C 12 weeks'
 */
export function preparationText({ group, readiness: { halfBy } }: ReadyRecord): string | undefined {
  const { batch: { inherited, events }, conditions: { dayZero } } = group.batches[0]!;
  const before = (all: readonly BatchEvent[]) => all.filter(({ type, entry }) => (
    type !== 'soak' && entry.moment.day < dayZero + halfBy));
  const text = treatmentText({ inherited: before(inherited), events: before(events) });
  return text === treatmentText({ inherited: [], events: [] }) ? undefined : text.replaceAll('scarified', 'scarification');
}
