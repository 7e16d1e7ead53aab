/** What the clocks of a zone show, against time that runs evenly; summer time taken into account. */
import { tzOffset } from '@date-fns/tz/tzOffset';
import { UTCDateMini } from '@date-fns/utc/date/mini';
import type { Day } from '../model/day.ts';

export const DAY = 1440;

/** So many answers are kept of each kind. */
const MOST = 20_000;

/** The first and the last of the moments at which a clock showed a time, in minutes since 1970-01-01T00:00Z. */
export interface Instants {
  readonly first: number;
  readonly last: number;
}

/**
 * When the clocks of a zone show a time of day, `minutes` after midnight (1440 is the midnight that ends the day). Two
 * moments in the hour that comes twice when summer time ends. A time that its beginning leaves out is read as if the
 * clocks had not been put forward yet.
 *
 * Example: in Europe/Vienna 2026-10-25 02:30 is both 00:30 and 01:30 of universal time
 */
export function instantsOf(day: Day, minutes: number, zone: string): Instants {
  const shown = day * DAY + minutes;
  const [before, after] = offsetsAround(day, zone);
  if (before === after) return { first: shown - before, last: shown - before };
  const right = [before, after].filter(offset => offsetAt(shown - offset, zone) === offset);
  const instants = (right.length > 0 ? right : [before]).map(offset => shown - offset);
  return { first: Math.min(...instants), last: Math.max(...instants) };
}

/** The day and the minutes after midnight that the clocks of a zone show at a moment. */
export function shownAt(instant: number, zone: string): { day: Day; minutes: number } {
  const [before, after] = offsetsAround(Math.floor(instant / DAY), zone);
  const shown = instant + (before === after ? before : offsetAt(instant, zone));
  const day = Math.floor(shown / DAY);
  return { day, minutes: shown - day * DAY };
}

/** Asking for a zone is slow as well, and every journal asks for its own. */
const asked = new Map<string, boolean>();

/** Whether a zone is one of the IANA list. */
export function isZone(zone: string): boolean {
  let found = asked.get(zone);
  if (found === undefined) {
    if (asked.size >= MOST) asked.clear();
    asked.set(zone, found = isKnown(zone));
  }
  return found;
}

function isKnown(zone: string): boolean {
  // Some engines take `+01:00` too; a journal's clock hangs at a place.
  if (!/^[A-Za-z]/.test(zone)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/** Minutes by which the clocks of a zone are ahead of universal time. */
function offsetAt(instant: number, zone: string): number {
  return tzOffset(zone, new UTCDateMini(instant * 60_000));
}

/** Asking for an offset is slow, and a journal asks for the same days again and again. */
const known = new Map<string, Map<Day, number>>();

/** The offsets well before and well after a day anywhere; where they are the same, it has one offset all day long. */
function offsetsAround(day: Day, zone: string): [before: number, after: number] {
  return [offsetOn(day - 1, zone), offsetOn(day + 2, zone)];
}

/** The offset at the beginning of a day of universal time. */
function offsetOn(day: Day, zone: string): number {
  let days = known.get(zone);
  if (!days || days.size >= MOST) {
    days = new Map<Day, number>();
    known.set(zone, days);
  }
  let offset = days.get(day);
  if (offset === undefined) days.set(day, offset = offsetAt(day * DAY, zone));
  return offset;
}
