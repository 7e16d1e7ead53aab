import { found, relatedTo, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** More seeds are given out than the lot or the batch has left. */
export const splitExceedsSeeds: LotCheck = function* (_lot, _context, events) {
  for (const { batch: { path, seeds, made }, entry, asked, left, closedBy } of events.of('split')) {
    if (left === undefined || seeds === undefined || asked <= left || closedBy) continue;
    yield found(entry.line, 'split-exceeds-seeds', factsSpan(entry, 'part'), { asked, batch: path, left: left > 0 ? `only ${left}` : 'none', seeds },
      { related: [relatedTo(made, `The ${seeds} seeds`)] });
  }
};
