import type { Batch } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** A count of seed that was neither sown nor soaked nor put into a stage by then. Some germinates unsown, chilled. */
export const countBeforeSowing: LotCheck = function* (_lot, _context, events) {
  for (const { batch, entry } of events.of('count')) {
    const { day } = entry.moment;
    const { sowing, unread } = batch;
    // Most counts are of seed that was sown.
    if (unread || (sowing && sowing.moment.day <= day)) continue;
    const begun = beginOf(batch);
    if (begun !== undefined && begun <= day) continue;
    const before = sowing ? `before it was sown on ${isoOf(sowing.moment.day)}`
      : begun !== undefined ? `before anything was done to it (${isoOf(begun)})`
        : 'but no record says that it was sown';
    yield found(entry.line, 'count-before-sowing', dateOf(entry), { batch: batch.path, date: isoOf(day), before },
      { related: sowing ? [relatedTo(sowing, 'The sowing')] : [] });
  }
};

/** The first day on which the seed was wet. */
function beginOf({ sowing, soaks, stages }: Batch): Day | undefined {
  const starts = [...soaks, ...stages].map(({ start }) => start.day);
  if (sowing) starts.push(sowing.moment.day);
  return starts.length > 0 ? Math.min(...starts) : undefined;
}
