import type { Soak } from '../journal/life.ts';
import { elapsed, isBefore, lengthText, type Elapsed, type Moment } from '../journal/moment.ts';
import { isForgotten } from '../journal/soaking.ts';
import { dayAfter, minutesOf, printQuantity, type Duration } from '../model/quantity.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { lengthSpan } from './spans.ts';

/** Minutes beyond the limit that are no warning: nobody lifts seed to the minute. Common practice, no source. */
const SLACK = 5;

/** Seed that was, is or will be in a soak for longer than the limit; only where it is certain. */
export const soakTooLong: LotCheck = function* (lot, { journal, now }, events) {
  const { value, origin, line: limitLine } = journal.limits.soak(lot.plant);
  for (const { soak, batches } of events.soaks) {
    const { entry, start, end, endEntry } = soak;
    const running = !end;
    // The end of one that lies far back is not known; that it is missing is a problem of its own.
    if (running && (isForgotten(soak, now) || batches.every(({ unread }) => unread))) continue;
    const to = end ?? { day: now.day, minutes: now.minutes ?? 0 };
    const length = running ? elapsed(start, to, journal.zone) : soak.length;
    if (!length || !isTooLong(soak, to, length, value)) continue;
    yield found(entry.line, 'soak-too-long', lengthSpan(soak), {
      batch: listed(batches.map(({ path }) => path), 'and'), lay: verbOf(soak, batches.length > 1, now),
      hours: hoursText(length, running, value), limit: printQuantity(value), origin,
      suggestion: suggestionFor(soak, now),
    }, {
      related: [
        ...(endEntry ? [relatedTo(endEntry, 'The end of the soak')] : []),
        ...(limitLine ? [relatedTo(journal.entryAt(limitLine)!, 'The limit')] : []),
      ],
    });
  }
};

/** By the clock on the wall too: from seven to seven o'clock is a day, also when summer time ends that night. */
function isTooLong({ start, endedBy }: Soak, to: Moment, length: Elapsed, limit: Duration): boolean {
  const most = limitMinutes(limit) + SLACK;
  if (length.least <= most) return false;
  const byClock = endedBy !== 'duration' && start.minutes !== undefined && to.minutes !== undefined;
  return !byClock || elapsed(start, to, undefined).least > most;
}

/** Example: 'will be in the soak', 'has been in the soak', 'was in the soak' */
function verbOf({ start, end }: Soak, several: boolean, now: Moment): string {
  if (isBefore(now, end ?? start)) return 'will be in the soak';
  if (!end) return several ? 'have been in the soak' : 'has been in the soak';
  return several ? 'were in the soak' : 'was in the soak';
}

/** What harm it does, and what to do now: lift the seed, plan a shorter soak, or tell when the seed really came out. */
function suggestionFor({ end, endedBy, doses }: Soak, now: Moment): string {
  if (!end) return 'Lift the seed now and write “lift”; if it came out before, write that time on the “lift”.';
  const raises = doses.some(({ agent }) => agent?.role !== 'water') ? ' and raise the dose' : '';
  const harm = `Long soaks starve seed of air${raises}: growers normally soak for a day at most.`;
  if (endedBy === 'lift') return `${harm} If a time is wrong, correct it.`;
  return isBefore(now, end)
    ? `${harm} Lift the seed sooner.`
    : `${harm} If the seed came out before that, write a “lift” with the time.`;
}

/** To a tenth of an hour; a few minutes over the limit still show. */
function hoursText(length: Elapsed, running: boolean, limit: Duration): string {
  const text = lengthText(length, running);
  return text.startsWith(printQuantity(limit)) ? `just over ${text}` : text;
}

function limitMinutes(limit: Duration): number {
  return minutesOf(limit) ?? dayAfter(0, limit) * 1440;
}
