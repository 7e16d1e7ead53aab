import { found, relatedTo, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';
import { factsSpan } from './spans.ts';

/** More seeds are given out than the lot or the batch has left. */
export const splitExceedsSeeds: LotCheck = function* (lot) {
  for (const { batch: { path, seeds, made }, event: { entry, asked, left } } of eventsOf(lot, 'split')) {
    if (left === undefined || seeds === undefined || asked <= left) continue;
    yield found(entry.line, 'split-exceeds-seeds', factsSpan(entry, 'part'), { asked, batch: path, left, seeds },
      { related: [relatedTo(made, `The ${seeds} seeds`)] });
  }
};
