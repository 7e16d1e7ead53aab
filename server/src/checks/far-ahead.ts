import { meaningOf } from '../model/events.ts';
import { addMonths, isoOf, type Day } from '../model/day.ts';
import { found, type LotCheck } from './check.ts';
import { dateOf } from './spans.ts';

/** Days ahead for which nobody writes down what is to be done to seed. Common practice, no source. */
const FAR_AHEAD_DAYS = 400;

/** What is to be done to seed more than a year from now; a slip of the year, as a rule. Said once for each day. */
export const farAhead: LotCheck = function* ({ batches }, { now }) {
  const said = new Set<number>();
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      const { entry, entry: { moment: { day }, record: { keyword } } } = event;
      const days = day - now.day;
      if (days <= FAR_AHEAD_DAYS || !Number.isFinite(day) || !meaningOf(event).isPlan || said.has(day)) continue;
      said.add(day);
      yield found(entry.line, 'far-ahead', dateOf(entry), {
        batch: batch.path, keyword, date: isoOf(day), days,
        suggestion: `Is the year right? It may be ${nearer(day, now.day).map(isoOf).join(' or ')}.`,
      });
    }
  }
};

/** The same day of this year and of the next, where that is not far ahead itself. */
export function nearer(day: Day, today: Day): Day[] {
  const yearOf = (each: Day) => Number(isoOf(each).slice(0, 4));
  return [0, 1]
    .map(later => addMonths(day, 12 * (yearOf(today) + later - yearOf(day))))
    .filter(each => each - today <= FAR_AHEAD_DAYS);
}
