/** Dates and times of day: from pieces to values, or to a problem with what was probably meant as its fix. */
import { dayOf, isoOf } from '../model/day.ts';
import type { DaySpan, Placed, Span, WrittenDate, WrittenTime } from '../model/record.ts';
import type { Atom } from './grammar.ts';
import { listed } from './nearest.ts';
import { meantMoment, meantMonth } from './meant-dates.ts';
import { replacement, type LineReader } from './reader.ts';

export const months = [
  'January', 'February', 'March', 'April', 'May', 'June',
  'July', 'August', 'September', 'October', 'November', 'December',
];

const pad = (n: number) => String(n).padStart(2, '0');

/** Whether a date stands alone, or may have a time after it. */
type Alone = 'day' | 'moment';

export function readDate(reader: LineReader, { text, start, end }: Atom, alone: Alone = 'moment'): WrittenDate | undefined {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) {
    const [year, month, date] = [Number(text.slice(0, 4)), Number(text.slice(5, 7)), Number(text.slice(8))];
    const day = dayOf(year, month, date);
    if (day !== undefined) return { day, start, end };
    reportImpossible(reader, { start, end }, year, month, date);
  } else {
    reportDate(reader, { start, end }, alone);
  }
  return undefined;
}

/** Reports what stands where a date is needed. */
export function reportDate(reader: LineReader, span: Span, alone: Alone = 'moment'): void {
  const text = reader.slice(span);
  const written = reader.shown(span);
  const readings = readingsOf(text);
  if (readings.length > 0) {
    reader.report('day-first-date', span, { written, readings: listed(readings, 'or') }, readings.map(iso => replacement(span, iso)));
    return;
  }
  const moment = meantMoment(text);
  const meant = moment && moment.length > 5 ? moment.slice(0, alone === 'day' ? 10 : 16) : undefined;
  const suggestion = meant
    ? `Write “${meant}”: year, month and day with hyphens${meant.length > 10 ? ', and a blank before the time' : ''}.`
    : 'Write year, month and day, such as 2026-01-19.';
  reader.report('bad-date', span, { written, suggestion }, meant ? [replacement(span, meant)] : []);
}

/** The days that three numbers can mean, none of which is a whole year in front: in every order in use. */
function readingsOf(text: string): string[] {
  const parts = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/.exec(text);
  if (!parts) return [];
  const [a, b, c] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const year = c < 100 ? c + 2000 : c;
  const yearFirst = c < 100 ? dayOf(a + 2000, b, c) : undefined;
  return [...new Set([yearFirst, dayOf(year, b, a), dayOf(year, a, b)])].filter(day => day !== undefined).map(isoOf);
}

function reportImpossible(reader: LineReader, span: Span, year: number, month: number, date: number): void {
  const name = months[month - 1];
  let last = 28;
  while (name && dayOf(year, month, last + 1) !== undefined) last++;
  const late = name !== undefined && date > last;
  const suggestion = late ? `${name} ${year} has ${last} days.` : 'Months go from 01 to 12 and days from 01.';
  reader.report('impossible-date', span, { written: reader.slice(span), suggestion },
    late && year >= 100 ? [replacement(span, `${reader.line.slice(span.start, span.start + 4)}-${pad(month)}-${last}`)] : []);
}

/** A date, a month or a year, as `collected` takes it. */
export function readDaySpan(reader: LineReader, span: Span): Placed<DaySpan> | undefined {
  const text = reader.slice(span);
  const { start, end } = span;
  const parts = /^(\d{4})(?:-(\d{2}))?$/.exec(text);
  if (parts) {
    const year = Number(parts[1]);
    const month = parts[2] === undefined ? undefined : Number(parts[2]);
    const first = dayOf(year, month ?? 1, 1);
    const next = month === undefined || month === 12 ? dayOf(year + 1, 1, 1) : dayOf(year, month + 1, 1);
    if (first !== undefined && next !== undefined) return { value: { first, last: next - 1 }, start, end };
    reader.report('impossible-date', span, { written: reader.shown(span), suggestion: 'Months go from 01 to 12.' });
    return undefined;
  }
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) {
    const date = readDate(reader, { kind: 'date', text, start, end }, 'day');
    return date && { value: { first: date.day, last: date.day }, start, end };
  }
  const meant = meantMonth(text);
  if (meant) {
    reader.report('bad-date', span, { written: reader.shown(span), suggestion: `Write the year first: “${meant}”.` },
      [replacement(span, meant)]);
  } else if (meantMoment(text) ?? readingsOf(text)[0]) {
    reportDate(reader, span, 'day');
  } else {
    reader.report('bad-date', span, {
      written: reader.shown(span), suggestion: 'Write a day, a month or a year: 2025-09-14, 2025-09 or 2025.',
    });
  }
  return undefined;
}

/** A time of day from 0:00 to 23:59. */
export function readTime(reader: LineReader, { text, start, end }: Atom): WrittenTime | undefined {
  const colon = text.indexOf(':');
  const hours = Number(text.slice(0, colon));
  const minutes = Number(text.slice(colon + 1));
  // Two digits of minutes; NaN where seconds follow.
  if (hours <= 23 && minutes <= 59 && text.length === colon + 3) return { minutes: hours * 60 + minutes, start, end };
  reportTime(reader, { start, end });
  return undefined;
}

/** Reports what stands where a time of day is needed. */
export function reportTime(reader: LineReader, span: Span): void {
  const meant = meantMoment(reader.slice(span));
  const suggestion = meant?.length === 5 ? `Did you mean “${meant}”?` : 'Write hours from 00 to 23 and minutes from 00 to 59, such as 19:30.';
  reader.report('bad-time', span, { written: reader.shown(span), suggestion }, meant?.length === 5 ? [replacement(span, meant)] : []);
}
