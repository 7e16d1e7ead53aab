import { meaningOf } from '../model/events.ts';
import { addMonths, isoOf } from '../model/day.ts';
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
      const year = Number(isoOf(now.day).slice(0, 4));
      const near = [year, year + 1]
        .map(each => addMonths(day, 12 * (each - Number(isoOf(day).slice(0, 4)))))
        .filter(each => each - now.day <= FAR_AHEAD_DAYS);
      yield found(entry.line, 'far-ahead', dateOf(entry), {
        batch: batch.path, keyword, date: isoOf(day), days,
        suggestion: `Is the year right? It may be ${near.map(isoOf).join(' or ')}.`,
      });
    }
  }
};
