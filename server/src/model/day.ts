/**
 * Calendar days as integers: days since 1970-01-01 in the proleptic Gregorian calendar, with no time zone. A day is
 * what the grower wrote, so it must not shift with the machine's zone.
 */
import { UTCDateMini } from '@date-fns/utc/date/mini';
import { addMonths as addCalendarMonths } from 'date-fns/addMonths';

export type Day = number;

const MS = 86_400_000;

/** The first year that can be written: Date.UTC takes those below 100 for years of the last century. */
export const FIRST_YEAR = 100;
/** 9999-12-31: no date that can be written is later. */
export const LAST_DAY: Day = 2_932_896;

/**
 * The day of a year, a month (1-12) and a day of the month; undefined when the calendar has no such day.
 *
 * Example: dayOf(2026, 2, 30) is undefined
 */
export function dayOf(year: number, month: number, day: number): Day | undefined {
  if (year < FIRST_YEAR) return undefined;
  const ms = Date.UTC(year, month - 1, day);
  // Every month has these; to ask the calendar costs more than all the rest.
  if (month >= 1 && month <= 12 && day >= 1 && day <= 28) return ms / MS;
  const date = new Date(ms);
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? ms / MS
    : undefined;
}

/**
 * The ISO 8601 form of a day.
 *
 * Example: isoOf(0) is '1970-01-01'
 */
export function isoOf(day: Day): string {
  return new Date(day * MS).toISOString().slice(0, -'T00:00:00.000Z'.length);
}

/** Whether a day has a date that can be written: it is within the years 100 to 9999. */
export function hasDate(day: Day): boolean {
  return dayOfIso(isoOf(day)) !== undefined;
}

/** The day of an ISO 8601 date; undefined when it is none. */
export function dayOfIso(iso: string): Day | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  return match ? dayOf(Number(match[1]), Number(match[2]), Number(match[3])) : undefined;
}

/** English name of the day of the week. */
export function weekdayOf(day: Day): string {
  return ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'][new Date(day * MS).getUTCDay()]!;
}

/**
 * The same day of the month some months later; the month's last day where it has no such day.
 *
 * Example: addMonths(dayOf(2026, 1, 31), 1) is dayOf(2026, 2, 28)
 */
export function addMonths(day: Day, months: number): Day {
  return addCalendarMonths(new UTCDateMini(day * MS), months).getTime() / MS;
}
