/** The due list as an iCalendar file (RFC 5545) that a calendar takes in again and again without doubling anything. */
import { UTCDateMini } from '@date-fns/utc/date/mini';
import {
  default as calendar, ICalAlarmRelatesTo, ICalAlarmType, ICalCalendarMethod, ICalEventTransparency,
  type ICalEventData,
} from 'ical-generator';
import { fileName } from '../journal/journal-file.ts';
import { instantIn, type Moment } from '../journal/moment.ts';
import { counted } from '../model/counted.ts';
import { isoOf, LAST_DAY, type Day } from '../model/day.ts';
import type { DueItem } from './due.ts';
import { dueRows, namesInRow, type DueRow } from './due-rows.ts';
import { LONG_AGO, longAgoRows } from './long-ago.ts';

/** What is due in one journal. */
export interface DueOfJournal {
  readonly items: readonly DueItem[];
  /** What is long ago. */
  readonly past?: readonly DueItem[];
  readonly now: Moment;
  /** The journal's zone; undefined: the clock of whoever reads the calendar. */
  readonly zone: string | undefined;
}

export interface IcsOptions {
  /** When the file is made, in milliseconds since 1970-01-01T00:00Z. */
  readonly stamp: number;
  /** Minutes before a time of day at which an alarm rings; another one rings at that time. */
  readonly leadMinutes?: number;
  /** Minutes after midnight at which the alarm of a whole day rings. */
  readonly dayAlarm?: number;
}

const LEAD_MINUTES = 30;
const DAY_ALARM = 9 * 60;
/** How long a timed event is drawn. */
const LENGTH = 15;

const MINUTE = 60_000;
const DAY = 1440 * MINUTE;

/**
 * An event for each item, timed where the item has a time of day (in universal time where the journal names a zone, so
 * that it rings at the right moment anywhere), else of a whole day. What is overdue stands on today and rings no alarm;
 * only what lies ahead does. Overdue counts of one place, a bag with its slots, are one event, and so is all of a
 * journal that is long ago. The UID is made of kind,
 * id and the date of the record that began it, so it stays when lines move, and when the item is put off; SEQUENCE and
 * LAST-MODIFIED grow with the time of making, so the later file wins. Where two journals have an item of the same name,
 * they are told apart by the order of the journals.
 */
export function icsOf(journals: readonly DueOfJournal[], options: IcsOptions): string {
  const file = calendar({
    prodId: { company: 'Plumule', product: 'Plumule', language: 'EN' },
    name: 'Plumule',
    method: ICalCalendarMethod.PUBLISH,
  });
  const uids = new Map<string, number>();
  for (const journal of journals) {
    for (const row of dueRows(journal.items)) {
      const { span, alarms } = timesOf(row.item, journal, options);
      const event = file.createEvent({ ...saysOf(row, options.stamp), id: uidOf(row.key, uids), ...span });
      for (const minutes of alarms) {
        const alarm = event.createAlarm({ type: ICalAlarmType.display, trigger: -60 * minutes });
        alarm.relatesTo(ICalAlarmRelatesTo.start);
      }
    }
  }
  for (const { past = [], now } of journals) {
    if (past.length === 0) continue;
    file.createEvent({
      ...madeAt(options.stamp), id: uidOf('long-ago', uids), ...wholeDay(now.day),
      summary: `${LONG_AGO}: ${counted(past.length, 'thing')}`,
      description: plain(longAgoRows(past).map(({ what, names }) => `${what}: ${names.join(', ')}`).join('\n')),
    });
  }
  // The file ends with a line end like every other of its lines (RFC 5545, 3.1).
  return `${file.toString()}\r\n`;
}

function uidOf(key: string, uids: Map<string, number>): string {
  const n = (uids.get(key) ?? 0) + 1;
  uids.set(key, n);
  return n === 1 ? `${key}@plumule` : `${key}@${n}.plumule`;
}

function saysOf(row: DueRow, stamp: number): Omit<ICalEventData, 'start'> {
  const { item, place, round } = row;
  return {
    ...madeAt(stamp),
    summary: plain(`${item.group === 'overdue' ? 'Overdue: ' : ''}${round ?? `${item.id}: ${item.what}`}`),
    description: plain(round === undefined ? descriptionOf(item) : namesInRow(row).join(', ')),
    location: place === undefined ? null : { title: plain(place) },
  };
}

function madeAt(stamp: number): Pick<ICalEventData, 'stamp' | 'lastModified' | 'sequence' | 'transparency'> {
  const made = new UTCDateMini(stamp);
  return {
    stamp: made,
    lastModified: made,
    // Minutes since 2020: whole numbers of iCalendar end at 2147483647.
    sequence: Math.max(0, Math.floor((stamp - Date.UTC(2020, 0)) / MINUTE)),
    transparency: ICalEventTransparency.TRANSPARENT,
  };
}

interface Times {
  readonly span: Pick<ICalEventData, 'start' | 'end' | 'allDay' | 'floating'>;
  /** Minutes from the start at which alarms ring; before it where negative. */
  readonly alarms: readonly number[];
}

function timesOf({ group, at, day, minutes }: DueItem, { now, zone }: DueOfJournal, options: IcsOptions): Times {
  const { leadMinutes = LEAD_MINUTES, dayAlarm = DAY_ALARM } = options;
  const timeOf = (moment: Moment, ofDay: number) =>
    (zone === undefined ? moment.day * DAY + ofDay * MINUTE : instantIn(moment, ofDay, zone) * MINUTE);
  const start = minutes === undefined ? day * DAY : timeOf(at, minutes);
  // No calendar has a date after the last day.
  const stop = start + LENGTH * MINUTE;
  if (group === 'overdue' || minutes === undefined || stop >= (LAST_DAY + 1) * DAY) {
    const on = group === 'overdue' ? now.day : day;
    const rings = on > now.day || (group !== 'overdue' && (now.minutes ?? 0) < dayAlarm);
    return { span: wholeDay(on), alarms: rings ? [dayAlarm] : [] };
  }
  return {
    span: { start: new UTCDateMini(start), end: new UTCDateMini(stop), floating: zone === undefined },
    // Alarms that should have rung are not rung later, when the calendar is taken in.
    alarms: [...new Set([-leadMinutes, 0])].filter(alarm => start + alarm * MINUTE > timeOf(now, now.minutes ?? 0)),
  };
}

function wholeDay(day: Day): Times['span'] {
  return { start: dateOf(day), ...(day < LAST_DAY && { end: dateOf(day + 1) }), allDay: true };
}

function dateOf(day: Day): Date {
  return new UTCDateMini(day * DAY);
}

function descriptionOf({ plant, day, group, action, entry }: DueItem): string {
  return [
    ...(plant === undefined ? [] : [plant]),
    ...(group === 'overdue' ? [`Due since ${isoOf(day)}`] : []),
    ...(action === undefined ? [] : [`Then write: ${action}`]),
    `From: ${fileName(entry.line.store.name)}: ${entry.line.text}`,
  ].join('\n');
}

/** Controls and halves of characters have no place in a calendar; the library sees to the rest. */
function plain(text: string): string {
  return text.replace(/[^\P{Cc}\n]|\p{Cs}/gu, '\uFFFD');
}
