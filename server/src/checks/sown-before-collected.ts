import { isoOf } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';
import { dateOf } from './spans.ts';

/** Seed is sown, soaked or put into a stage before it was collected. Said once for each batch, where it first shows. */
export const sownBeforeCollected: LotCheck = function* (lot) {
  const { collected, definition } = lot;
  if (!collected) return;
  let last;
  for (const { batch, event: { entry } } of eventsOf(lot, 'sow', 'soak', 'stage')) {
    if (entry.moment.day >= collected.first || batch === last) continue;
    last = batch;
    yield found(entry.line, 'sown-before-collected', dateOf(entry),
      { batch: batch.path, date: isoOf(entry.moment.day), collected: isoOf(collected.first) },
      { related: [relatedTo(definition, 'The lot')] });
  }
};
