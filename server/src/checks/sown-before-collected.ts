import type { Batch } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** Seed is sown, soaked or put into a stage before it was collected. Said once for each batch, where it first shows. */
export const sownBeforeCollected: LotCheck = function* ({ collected, definition }, _context, events) {
  if (!collected) return;
  const said = new Set<Batch>();
  for (const { batch, entry } of events.where(({ wakes }) => wakes)) {
    if (entry.moment.day >= collected.first || said.has(batch)) continue;
    said.add(batch);
    yield found(entry.line, 'sown-before-collected', dateOf(entry),
      { batch: batch.path, date: isoOf(entry.moment.day), collected: isoOf(collected.first) },
      { related: [relatedTo(definition, 'The lot')] });
  }
};
