/** When something happened, as the diary says it: a day, and the time of day where one was written. */
import { TZDate } from '@date-fns/tz';
import { isoOf, type Day } from '../model/day.ts';
import { minutesOf, dayAfter, type Duration } from '../model/quantity.ts';

export interface Moment {
  readonly day: Day;
  /** Minutes since midnight, wall clock; undefined where no time was written. */
  readonly minutes: number | undefined;
}

/** A length of time in minutes. `least` and `most` differ where a time of day was not written. */
export interface Elapsed {
  readonly least: number;
  readonly most: number;
  /** Taken from the clock on the wall, because the journal names no zone. */
  readonly wallClock: boolean;
}

const DAY = 1440;

/**
 * Time from one moment to a later one; in a zone, the hour that summer time takes or gives is counted. A time that was
 * not written can be any of its day.
 *
 * Example: from 2026-03-28 19:00 to 2026-03-29 19:00 in Europe/Vienna are 1380 minutes
 */
export function elapsed(from: Moment, to: Moment, zone: string | undefined): Elapsed {
  const at = (day: Day, minutes: number) => (zone === undefined ? day * DAY + minutes : instant(day, minutes, zone));
  const least = at(to.day, to.minutes ?? 0) - at(from.day, from.minutes ?? DAY);
  const most = at(to.day, to.minutes ?? DAY) - at(from.day, from.minutes ?? 0);
  return { least: Math.max(0, least), most: Math.max(0, most), wallClock: zone === undefined };
}

/** Minutes since 1970-01-01T00:00Z of a wall-clock time in a zone. */
function instant(day: Day, minutes: number, zone: string): number {
  const [year, month, date] = isoOf(day + Math.floor(minutes / DAY)).split('-').map(Number) as [number, number, number];
  const within = minutes % DAY;
  return new TZDate(year, month - 1, date, Math.floor(within / 60), within % 60, zone).getTime() / 60_000;
}

/** The moment a duration after another. Hours and minutes go through the zone; days and longer keep the time of day. */
export function after({ day, minutes }: Moment, duration: Duration, zone: string | undefined): Moment {
  const length = duration.unit === 'h' || duration.unit === 'min' ? minutesOf(duration) : undefined;
  if (length === undefined) return { day: dayAfter(day, duration), minutes };
  // Without a time of day only whole days can be added to it.
  if (minutes === undefined) return { day: day + Math.floor(length / DAY), minutes: undefined };
  if (zone === undefined) return { day: day + Math.floor((minutes + length) / DAY), minutes: (minutes + length) % DAY };
  const end = new TZDate((instant(day, minutes, zone) + length) * 60_000, zone);
  const midnight = Date.UTC(end.getFullYear(), end.getMonth(), end.getDate());
  return { day: midnight / (DAY * 60_000), minutes: end.getHours() * 60 + end.getMinutes() };
}

/** Whether a zone is one of the IANA list. */
export function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
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
