/** How long seed lies in a soak. */
import { elapsed, printMoment } from '../journal/moment.ts';
import type { Elapsed } from '../journal/moment.ts';
import { minutesOf, printQuantity } from '../model/quantity.ts';
import { factOf, type Span } from '../model/record.ts';
import type { Soak } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, subjectOf, type LotCheck } from './check.ts';

export const soakTooLong: LotCheck = function* ({ batches }, { journal, now }) {
  const { value, origin } = journal.limits.soak;
  const limit = minutesOf(value);
  if (limit === undefined) return;
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type !== 'soak') continue;
      const { soak } = event;
      const running = !soak.end;
      const length = soak.length ?? elapsed(soak.start, { day: now.day, minutes: now.minutes ?? 0 }, journal.zone);
      if (length.least <= limit) continue;
      const suggestion = running && !batch.closed
        ? 'Lift the seed now and write “lift”.'
        : 'Long soaks starve seed of air and raise the dose: a day and no longer is common practice.';
      yield found(event.entry.line, 'soak-too-long', spanOfLength(soak),
        { batch: batch.path, lay: running ? 'lies' : 'lay', hours: lengthText(length, running), limit: printQuantity(value), origin, suggestion },
        [], soak.endEntry ? [relatedTo(soak.endEntry, 'The end of the soak')] : []);
    }
  }
};

function spanOfLength({ entry, endedBy }: Soak): Span {
  const { record } = entry;
  const fact = endedBy === 'duration' ? factOf(record, 'duration') : endedBy === 'until' ? factOf(record, 'until') : undefined;
  return fact ?? subjectOf(entry);
}

/**
 * A length of time in plain words.
 *
 * Example: lengthText({ least: 1800, most: 1800, wallClock: false }) is '30 h'
 */
export function lengthText({ least, most }: Elapsed, soFar = false): string {
  const hours = (minutes: number) => String(Math.round(minutes / 6) / 10);
  if (least === most) return `${hours(least)} h${soFar ? ' so far' : ''}`;
  return soFar ? `at least ${hours(least)} h so far` : `${hours(least)} to ${hours(most)} h`;
}

export const liftMissing: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type !== 'soak' || event.soak.endedBy !== 'next' || !event.soak.endEntry) continue;
      const { endEntry } = event.soak;
      yield found(event.entry.line, 'lift-missing', subjectOf(event.entry),
        { batch: batch.path, next: endEntry.record.keyword, date: isoOf(endEntry.moment.day) }, [], [relatedTo(endEntry, 'What came next')]);
    }
  }
};

export const liftWithoutSoak: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type === 'lift' && !event.soak) {
        yield found(event.entry.line, 'lift-without-soak', subjectOf(event.entry), { batch: batch.path });
      } else if (event.type === 'lift' && event.soak && isEarlier(event.soak)) {
        yield found(event.entry.line, 'end-before-start', event.entry.record.time ?? subjectOf(event.entry),
          { end: printMoment(event.entry.moment), start: printMoment(event.soak.start) });
      }
    }
  }
};

function isEarlier({ start, end }: Soak): boolean {
  return end !== undefined && end.day === start.day && end.minutes !== undefined && start.minutes !== undefined && end.minutes < start.minutes;
}
