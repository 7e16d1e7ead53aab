import { isBefore, printMoment } from '../journal/moment.ts';
import { factOf } from '../model/record.ts';
import { found, type LotCheck } from './check.ts';

/** A soak with an `until` before its start. A `lift` before the start is one without a soak. */
export const endBeforeStart: LotCheck = function* (_lot, _context, events) {
  for (const { entry } of events.of('soak')) {
    const until = factOf(entry.record, 'until');
    if (!until) continue;
    const end = { day: until.date.day, minutes: until.time?.minutes };
    if (!isBefore(end, entry.moment)) continue;
    yield found(entry.line, 'end-before-start', until, { end: printMoment(end), start: printMoment(entry.moment) });
  }
};
