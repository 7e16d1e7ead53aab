import { elapsed, lengthText, type Elapsed } from '../journal/moment.ts';
import { dayAfter, minutesOf, printQuantity, type Duration } from '../model/quantity.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { lengthSpan } from './spans.ts';

/** Seed that lay, or lies by now, longer in a soak than the limit; only where it is certain. */
export const soakTooLong: LotCheck = function* (lot, { journal, now }, events) {
  const { value, origin, line: limitLine } = journal.limits.soak(lot.plant);
  const limit = limitMinutes(value);
  for (const { soak, batches } of events.soaks) {
    const { entry, start, end, endEntry } = soak;
    const running = !end;
    if (running && batches.every(({ unread }) => unread)) continue;
    const length = running ? elapsed(start, { day: now.day, minutes: now.minutes ?? 0 }, journal.zone) : soak.length;
    if (!length || length.least <= limit) continue;
    const raises = soak.doses.some(({ agent }) => agent?.role !== 'water') ? ' and raise the dose' : '';
    const suggestion = running
      ? 'Lift the seed now and write “lift”.'
      : `Long soaks starve seed of air${raises}: a day and no longer is common practice.`;
    const lay = running ? 'has lain' : 'lay';
    yield found(entry.line, 'soak-too-long', lengthSpan(soak), {
      batch: listed(batches.map(({ path }) => path), 'and'), lay: running && batches.length > 1 ? 'have lain' : lay,
      hours: hoursText(length, running, value), limit: printQuantity(value), origin, suggestion,
    }, {
      related: [
        ...(endEntry ? [relatedTo(endEntry, 'The end of the soak')] : []),
        ...(limitLine ? [relatedTo(journal.entryAt(limitLine)!, 'The limit')] : []),
      ],
    });
  }
};

/** To a tenth of an hour; a minute over the limit still shows. */
function hoursText(length: Elapsed, running: boolean, limit: Duration): string {
  const text = lengthText(length, running);
  return text.startsWith(printQuantity(limit)) ? `just over ${text}` : text;
}

function limitMinutes(limit: Duration): number {
  return minutesOf(limit) ?? dayAfter(0, limit) * 1440;
}
