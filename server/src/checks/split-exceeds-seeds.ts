import { otherwise } from '../journal/estimates.ts';
import type { SplitEvent } from '../journal/life.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** More seeds are given out than the lot or the batch has left, however many of an estimate there were. */
export const splitExceedsSeeds: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('split')) {
    const { batch: { path, made }, entry, closedBy } = event;
    const cases = [event, ...otherwise(event.batch, event)];
    const sums = cases.filter(isKnown);
    // Where seeds were estimated, the life as it was read does not know them.
    if (closedBy || sums.length < Math.max(1, cases.length - 1)) continue;
    if (sums.some(({ asked, left }) => asked <= left)) continue;
    const mildest = sums.reduce((a, b) => (b.asked - b.left < a.asked - a.left ? b : a));
    const { asked, left, batch: { seeds } } = mildest;
    yield found(entry.line, 'split-exceeds-seeds', factsSpan(entry, 'part'), { asked, batch: path, left: left > 0 ? `only ${left}` : 'none', seeds: seeds! },
      { related: [relatedTo(made, `The ${seeds!} seeds`)] });
  }
};

function isKnown(event: SplitEvent): event is SplitEvent & { readonly left: number } {
  return event.left !== undefined && event.batch.seeds !== undefined;
}
