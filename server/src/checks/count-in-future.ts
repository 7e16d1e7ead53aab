import { isoOf } from '../model/day.ts';
import { found, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';
import { dateOf } from './spans.ts';

/** A count that is dated after today. */
export const countInFuture: LotCheck = function* (lot, { now }) {
  for (const { event: { entry } } of eventsOf(lot, 'count')) {
    const { day } = entry.moment;
    if (day > now.day) yield found(entry.line, 'count-in-future', dateOf(entry), { date: isoOf(day), today: isoOf(now.day) });
  }
};
