import { cutClasses } from '../model/record.ts';
import { found, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** A cut test sorts every seed that has neither germinated nor rotted nor been lost; no more, no fewer. */
export const cutDoesNotAddUp: LotCheck = function* (_lot, _context, events) {
  for (const { batch, entry, classes, expected, tested, totals, closedBy } of events.of('cut')) {
    if (expected === undefined || tested === undefined || batch.unread || closedBy) continue;
    const sum = cutClasses.reduce((total, what) => total + classes[what], 0);
    if (sum === expected) continue;
    const { germinated, rotted, lost } = totals;
    const how = `${tested} ${batch.sowing ? 'sown' : 'seeds'}, ${germinated} germinated, ${rotted} rotted, ${lost} lost`;
    yield found(entry.line, 'cut-does-not-add-up', factsSpan(entry, 'cut'), { batch: batch.path, sum, left: expected, how });
  }
};
