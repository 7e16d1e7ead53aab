/** When something happened, as the diary says it: a day, and the time of day where one was written. */
import { isoOf, type Day } from '../model/day.ts';
import { dayAfter, minutesOf, type Duration } from '../model/quantity.ts';
import { DAY, instantsOf, shownAt } from './zone.ts';

export interface Moment {
  readonly day: Day;
  /** Minutes since midnight, wall clock; undefined where no time was written. */
  readonly minutes: number | undefined;
  /** Worked out, not written: the second of the two moments at which the clock shows this when summer time ends. */
  readonly second?: true;
}

/** A length of time in minutes. `least` and `most` differ where a time of day was not written, or came twice. */
export interface Elapsed {
  readonly least: number;
  readonly most: number;
  /** Taken from the clock on the wall, because the journal names no zone. */
  readonly wallClock: boolean;
}

/**
 * Time from one moment to a later one; in a zone, the hour that summer time takes or gives is counted. A time that was
 * not written can be any of its day.
 *
 * Example: from 2026-03-28 19:00 to 2026-03-29 19:00 in Europe/Vienna are 1380 minutes
 */
export function elapsed(from: Moment, to: Moment, zone: string | undefined): Elapsed {
  const start = boundsOf(from, zone);
  const end = boundsOf(to, zone);
  return {
    least: Math.max(0, end.earliest - start.latest),
    most: Math.max(0, end.latest - start.earliest),
    wallClock: zone === undefined,
  };
}

/** The earliest and the latest moment that is meant, in minutes on an even scale. */
function boundsOf({ day, minutes }: Moment, zone: string | undefined): { earliest: number; latest: number } {
  const [first, last] = [minutes ?? 0, minutes ?? DAY];
  if (zone === undefined) return { earliest: day * DAY + first, latest: day * DAY + last };
  return { earliest: instantsOf(day, first, zone).first, latest: instantsOf(day, last, zone).last };
}

/** The moment a duration after another. Hours and minutes go through the zone; whole days and longer keep the time. */
export function after({ day, minutes }: Moment, duration: Duration, zone: string | undefined): Moment {
  const whole = duration.unit !== 'h' && duration.unit !== 'min' && Number.isInteger(duration.value);
  const length = whole ? undefined : minutesOf(duration);
  if (length === undefined) return { day: dayAfter(day, duration), minutes };
  // Without a time of day only whole days can be added to it.
  if (minutes === undefined) return { day: day + Math.floor(length / DAY), minutes };
  const end = minutes + Math.round(length);
  if (zone !== undefined) return momentAt(instantsOf(day, minutes, zone).first + Math.round(length), zone);
  return { day: day + Math.floor(end / DAY), minutes: end % DAY };
}

/** What the clocks of a zone show, in minutes since 1970-01-01T00:00Z. */
export function momentAt(instant: number, zone: string): Moment {
  const { day, minutes } = shownAt(instant, zone);
  return instantsOf(day, minutes, zone).first < instant ? { day, minutes, second: true } : { day, minutes };
}

/** When a clock shows this, in minutes since 1970-01-01T00:00Z. A time that was written and came twice is the first. */
export function instantIn({ day, second }: Moment, minutes: number, zone: string): number {
  const { first, last } = instantsOf(day, minutes, zone);
  return second ? last : first;
}

/**
 * Example: printMoment({ day: dayOf(2026, 1, 10), minutes: 1140 }) is '2026-01-10 19:00'
 */
export function printMoment({ day, minutes }: Moment): string {
  return minutes === undefined ? isoOf(day) : `${isoOf(day)} ${printTime(minutes)}`;
}

/** Example: printTime(545) is '09:05' */
export function printTime(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

/** Whether `a` certainly lies before `b`: times that were not written leave it open. */
export function isBefore(a: Moment, b: Moment): boolean {
  if (a.day !== b.day) return a.day < b.day;
  return a.minutes !== undefined && b.minutes !== undefined && a.minutes < b.minutes;
}

/** As `isBefore`; in a zone, the hour that comes twice when summer time ends is told apart. */
export function isOver(moment: Moment, now: Moment, zone: string | undefined): boolean {
  if (zone === undefined || moment.minutes === undefined || now.minutes === undefined) return isBefore(moment, now);
  return instantIn(moment, moment.minutes, zone) < instantIn(now, now.minutes, zone);
}

/**
 * A length of time in plain words, in minutes below an hour, else in hours. Where it is known only within limits, both
 * are said.
 *
 * Example: lengthText({ least: 1800, most: 1800, wallClock: false }) is '30 h'
 */
export function lengthText({ least, most, wallClock }: Elapsed, soFar = false): string {
  const clock = wallClock ? ' by the wall clock' : '';
  const end = soFar ? `${clock} so far` : clock;
  const exact = least === most;
  const unit = most < 60 ? 'min' : 'h';
  const number = (minutes: number) => String(unit === 'min' ? Math.round(minutes) : Math.round(minutes / 6) / 10);
  if (exact) return `${number(least)} ${unit}${end}`;
  return soFar ? `at least ${number(least)} ${unit}${end}` : `${number(least)} to ${number(most)} ${unit}${end}`;
}
