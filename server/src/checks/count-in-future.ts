import { isoOf } from '../model/day.ts';
import { found, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** A count or a cut test that is dated after today. */
export const countInFuture: LotCheck = function* (_lot, { now }, events) {
  for (const { entry, type } of [...events.of('count'), ...events.of('cut')]) {
    const { day } = entry.moment;
    if (day <= now.day) continue;
    yield found(entry.line, 'count-in-future', dateOf(entry),
      { what: type === 'cut' ? 'cut test' : 'count', date: isoOf(day), today: isoOf(now.day) });
  }
};
