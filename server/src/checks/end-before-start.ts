import { isBefore, printMoment } from '../journal/moment.ts';
import { factOf } from '../model/record.ts';
import { found, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';

/** A soak with an `until` before its start. A `lift` before the start is one without a soak. */
export const endBeforeStart: LotCheck = function* (lot) {
  for (const { event: { entry } } of eventsOf(lot, 'soak')) {
    const until = factOf(entry.record, 'until');
    if (!until) continue;
    const end = { day: until.date.day, minutes: until.time?.minutes };
    if (!isBefore(end, entry.moment)) continue;
    yield found(entry.line, 'end-before-start', until, { end: printMoment(end), start: printMoment(entry.moment) });
  }
};
