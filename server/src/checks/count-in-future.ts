import { isoOf } from '../model/day.ts';
import { found, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** A count that is dated after today. */
export const countInFuture: LotCheck = function* (_lot, { now }, events) {
  for (const { entry } of events.of('count')) {
    const { day } = entry.moment;
    if (day > now.day) yield found(entry.line, 'count-in-future', dateOf(entry), { date: isoOf(day), today: isoOf(now.day) });
  }
};
