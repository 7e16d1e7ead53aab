/** Dates and times in other forms than the journal's, where they can mean one thing only. */
import { dayOf, isoOf } from '../model/day.ts';

const names = [
  'january', 'february', 'march', 'april', 'may', 'june',
  'july', 'august', 'september', 'october', 'november', 'december',
];

const pad = (n: number | string) => String(n).padStart(2, '0');

/** The number of a month from its name or the beginning of it: 9 of `Sept.`. */
function monthOf(name: string): number | undefined {
  const index = names.findIndex(full => full.startsWith(name.toLowerCase()));
  return name.length >= 3 && index >= 0 ? index + 1 : undefined;
}

/**
 * The date, the time of day or both that a text means, in the journal's form; undefined when it is none or may be
 * several.
 *
 * Example: meantMoment('19 Jan 2026') is '2026-01-19', meantMoment('7.30 pm') is '19:30'
 */
export function meantMoment(text: string): string | undefined {
  if (text.length > 40) return undefined;
  const both = /^([\d-]+)[T ](.+)$/.exec(text);
  const date = both && meantDate(both[1]!);
  const time = date && meantTime(both[2]!);
  return time ? `${date} ${time}` : meantDate(text) ?? meantTime(text);
}

function meantDate(text: string): string | undefined {
  const digits = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})$/.exec(text);
  if (digits && (digits[2] !== '' || text.length === 8)) return iso(digits[1]!, Number(digits[3]), digits[4]!);
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th|\.)? ([a-z]+)\.? (\d{4})$/i.exec(text);
  if (dayFirst) return iso(dayFirst[3]!, monthOf(dayFirst[2]!), dayFirst[1]!);
  const monthFirst = /^([a-z]+)\.? (\d{1,2})(?:st|nd|rd|th|\.)? (\d{4})$/i.exec(text);
  return monthFirst ? iso(monthFirst[3]!, monthOf(monthFirst[1]!), monthFirst[2]!) : undefined;
}

function iso(year: string, month: number | undefined, date: string): string | undefined {
  const day = month === undefined ? undefined : dayOf(Number(year), month, Number(date));
  return day === undefined ? undefined : isoOf(day);
}

function meantTime(text: string): string | undefined {
  const parts = /^(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2}(?:\.\d+)?)? ?([ap]\.?m\.?|h)?$/i.exec(text);
  // A bare number is none.
  if (!parts || (!parts[2] && !parts[3])) return undefined;
  const half = parts[3]?.charAt(0).toLowerCase();
  const twelve = half === 'a' || half === 'p';
  const written = Number(parts[1]);
  if (twelve && (written < 1 || written > 12)) return undefined;
  const hours = twelve ? (written % 12) + (half === 'p' ? 12 : 0) : written;
  const minutes = Number(parts[2] ?? 0);
  return hours <= 23 && minutes <= 59 ? `${pad(hours)}:${pad(minutes)}` : undefined;
}

/**
 * The month that a text means, in the journal's form.
 *
 * Example: meantMonth('Sept 2025') is '2025-09'
 */
export function meantMonth(text: string): string | undefined {
  if (text.length > 20) return undefined;
  const named = /^([a-z]+)\.? (\d{4})$/i.exec(text);
  const numbers = /^(\d{1,2})[-/.](\d{4})$/.exec(text);
  const reversed = /^(\d{4})[-/.](\d{1,2})$/.exec(text);
  const [year, month] = named ? [named[2], monthOf(named[1]!)]
    : numbers ? [numbers[2], Number(numbers[1])] : reversed ? [reversed[1], Number(reversed[2])] : [];
  return year && month && month >= 1 && month <= 12 ? `${year}-${pad(month)}` : undefined;
}
