import { isSeenAhead } from '../journal/seen.ts';
import { isoOf } from '../model/day.ts';
import { found, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** A count or a cut test that is dated after today. */
export const countInFuture: LotCheck = function* (_lot, { now }, events) {
  for (const event of [...events.of('count'), ...events.of('cut')]) {
    if (!isSeenAhead(event, now.day)) continue;
    const { entry, entry: { moment: { day } }, type } = event;
    yield found(entry.line, 'count-in-future', dateOf(entry),
      { what: type === 'cut' ? 'cut test' : 'count', date: isoOf(day), today: isoOf(now.day) });
  }
};
