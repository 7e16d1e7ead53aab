import type { Batch } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';
import { dateOf } from './spans.ts';

/** A count of seed that was neither sown nor soaked nor put into a stage by then. Some germinates in the cold, unsown. */
export const countBeforeSowing: LotCheck = function* (lot) {
  for (const { batch, event: { entry } } of eventsOf(lot, 'count')) {
    const { day } = entry.moment;
    const begun = beginOf(batch);
    if (batch.unread || (begun !== undefined && begun <= day)) continue;
    const { sowing, origin } = batch;
    const before = sowing ? `before it was sown on ${isoOf(sowing.moment.day)}`
      : begun !== undefined ? `before anything was done to it (${isoOf(begun)})`
        : 'but no sowing is written';
    yield found(entry.line, 'count-before-sowing', dateOf(entry), { batch: batch.path, date: isoOf(day), before },
      { related: sowing && origin ? [relatedTo(sowing, 'The sowing')] : [] });
  }
};

/** The first day on which the seed was wet. */
function beginOf({ sowing, soaks, stages }: Batch): Day | undefined {
  const days = [...(sowing ? [sowing.moment] : []), ...soaks.map(({ start }) => start), ...stages.map(({ start }) => start)]
    .map(({ day }) => day);
  return days.length > 0 ? Math.min(...days) : undefined;
}
