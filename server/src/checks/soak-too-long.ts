import { elapsed, lengthText } from '../journal/moment.ts';
import { dayAfter, minutesOf, printQuantity, type Duration } from '../model/quantity.ts';
import { factOf, type Span } from '../model/record.ts';
import type { Soak } from '../journal/life.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { soaksOf } from './soaks.ts';
import { subjectOf } from './spans.ts';

/** Seed that lay, or lies by now, longer in a soak than the limit; only where it is certain. */
export const soakTooLong: LotCheck = function* (lot, { journal, now }) {
  const { value, origin, line: limitLine } = journal.limits.soak(lot.plant);
  const limit = limitMinutes(value);
  for (const { soak, batches } of soaksOf(lot)) {
    const { entry, start, end, endEntry } = soak;
    const running = !end;
    if (running && batches.every(({ unread }) => unread)) continue;
    const length = running ? elapsed(start, { day: now.day, minutes: now.minutes ?? 0 }, journal.zone) : soak.length;
    if (!length || length.least <= limit) continue;
    const suggestion = running
      ? 'Lift the seed now and write “lift”.'
      : 'Long soaks starve seed of air and raise the dose: a day and no longer is common practice.';
    const lay = running ? 'has lain' : 'lay';
    yield found(entry.line, 'soak-too-long', spanOfLength(soak), {
      batch: listed(batches.map(({ path }) => path), 'and'), lay: running && batches.length > 1 ? 'have lain' : lay,
      hours: lengthText(length, running), limit: printQuantity(value), origin, suggestion,
    }, {
      related: [
        ...(endEntry ? [relatedTo(endEntry, 'The end of the soak')] : []),
        ...(limitLine ? [relatedTo(journal.entryAt(limitLine)!, 'The limit')] : []),
      ],
    });
  }
};

function limitMinutes(limit: Duration): number {
  return minutesOf(limit) ?? dayAfter(0, limit) * 1440;
}

function spanOfLength({ entry, endedBy }: Soak): Span {
  const { record } = entry;
  const fact = endedBy === 'duration' ? factOf(record, 'duration') : endedBy === 'until' ? factOf(record, 'until') : undefined;
  return fact ?? subjectOf(entry);
}
