/** The only clock of the server. */
import { dayOf, dayOfIso, isoOf } from '../model/day.ts';
import { instantIn, momentAt, type Moment } from '../journal/moment.ts';

/** The present day and time in a zone, or where the server runs. */
export function present(zone: string | undefined): Moment {
  if (zone !== undefined) return momentAt(Math.floor(Date.now() / 60_000), zone);
  const date = new Date();
  return {
    day: dayOf(date.getFullYear(), date.getMonth() + 1, date.getDate())!,
    minutes: date.getHours() * 60 + date.getMinutes(),
  };
}

/**
 * A moment that was given in place of the present: a date, or a date and a time. Undefined when it is none.
 *
 * Example: momentOf('2026-01-12T08:00') is 8 o'clock on that day; momentOf('2026-01-12') has no time
 */
export function momentOf(text: string): Moment | undefined {
  const [date = '', time] = text.trim().split(/[T ]/);
  const day = dayOfIso(date);
  const match = time === undefined ? undefined : /^([01]\d|2[0-3]):([0-5]\d)$/.exec(time);
  if (day === undefined || (time !== undefined && !match)) return undefined;
  return { day, minutes: match ? Number(match[1]) * 60 + Number(match[2]) : undefined };
}

/**
 * A moment of the wall clock in a zone, or where the server runs, in milliseconds since 1970-01-01T00:00Z. Undefined
 * without a time of day.
 */
export function instantOf(moment: Moment, zone: string | undefined): number | undefined {
  const { day, minutes } = moment;
  if (minutes === undefined) return undefined;
  if (zone !== undefined) return instantIn(moment, minutes, zone) * 60_000;
  const [year, month, date] = isoOf(day).split('-').map(Number) as [number, number, number];
  return new Date(year, month - 1, date, Math.floor(minutes / 60), minutes % 60).getTime();
}
