/** Dates as growers and spreadsheets write them, in any order; none is guessed where a text allows two. */
import { dayOf, type Day } from '../model/day.ts';
import { months } from '../syntax/dates.ts';
import type { DateOrder } from './answers.ts';

/** What the sheet says of its dates beyond the cell itself. */
export interface DateHabit {
  readonly order?: DateOrder | undefined;
  /** For dates without a year. */
  readonly year?: number | undefined;
}

export interface CellDate {
  readonly day: Day;
  /** As a journal writes it; a midnight is what a spreadsheet adds. */
  readonly time?: string;
}

/** A date; or what must be known first; or that the text is none. */
export type DateReading = CellDate | { readonly asks: 'order' | 'year' } | undefined;

const others = [
  'januar', 'februar', 'märz', 'april', 'mai', 'juni', 'juli', 'august', 'september', 'oktober', 'november', 'dezember',
  'janvier', 'février', 'mars', 'avril', 'mai', 'juin', 'juillet', 'août', 'septembre', 'octobre', 'novembre', 'décembre',
];
const monthNames = [...months, ...others].map(name => plainWord(name));
const weekdays = /^(?:mon|tue|wed|thu|fri|sat|sun|mo|di|mi|do|fr|sa|so|lun|mar|mer|jeu|ven|sam|dim)[a-z]*[.,]* +(?=.*\d)/i;

function plainWord(word: string): string {
  return word.toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '').replace(/\.$/, '');
}

/** The number of a month from its name or the beginning of it; undefined where it begins several or none. */
function monthNamed(word: string): number | undefined {
  const plain = plainWord(word);
  if (plain.length < 3) return undefined;
  const found = new Set(monthNames.flatMap((name, n) => (name.startsWith(plain) ? [(n % 12) + 1] : [])));
  const [only] = found;
  return found.size === 1 ? only : undefined;
}

/** What is longer holds no date, and to look for one would take time with the square of its length. */
const LONGEST = 40;

/**
 * Reads a date, perhaps with a time behind it.
 *
 * Example: readCellDate('12/02/2026', { order: 'day-month' }) is the day 2026-02-12; without an order it asks for it
 */
export function readCellDate(cell: string, habit: DateHabit): DateReading {
  if (cell.length > LONGEST) return undefined;
  const timed = /^(.*\d{4}.*?)[T ]+(\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?Z?$/.exec(cell);
  const [hours, minutes] = [Number(timed?.[2] ?? 0), Number(timed?.[3] ?? 0)];
  if (hours > 23 || minutes > 59) return undefined;
  const reading = readDay((timed?.[1] ?? cell).replace(weekdays, '').trim(), habit);
  if (!reading || 'asks' in reading || (hours === 0 && minutes === 0)) return reading;
  return { ...reading, time: `${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}` };
}

function readDay(text: string, habit: DateHabit): DateReading {
  const yearFirst = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})\.?$/.exec(text);
  if (yearFirst && (yearFirst[2] !== '' || text.length === 8)) {
    return dated(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4]));
  }
  const named = /^(\d{1,2})(?:st|nd|rd|th|er|\.)?[- ]*(?:of )?(\p{L}{3,}\.?)[-, ]*(?:'?(\d{4}|\d{2}))?$/iu.exec(text);
  if (named) return inYear(named[3], monthNamed(named[2]!), Number(named[1]), habit);
  const monthFirst = /^(\p{L}{3,}\.?)[- ]*(\d{1,2})(?:st|nd|rd|th|\.)?(?:[-, ]+'?(\d{4}|\d{2}))?$/iu.exec(text);
  if (monthFirst) return inYear(monthFirst[3], monthNamed(monthFirst[1]!), Number(monthFirst[2]), habit);
  // With points the day comes first in every country that writes it so.
  const pointed = /^(\d{1,2})\. ?(\d{1,2})\.? ?(\d{4}|\d{2})?\.?$/.exec(text);
  if (pointed) return inYear(pointed[3], Number(pointed[2]), Number(pointed[1]), habit);
  const parts = partsOf(text);
  return parts && inOrder(parts, habit);
}

interface Parts {
  readonly first: number;
  readonly second: number;
  readonly year: string | undefined;
}

function partsOf(text: string): Parts | undefined {
  const found = /^(\d{1,2})([-/])(\d{1,2})(?:\2(\d{4}|\d{2}))?$/.exec(text);
  return found ? { first: Number(found[1]), second: Number(found[3]), year: found[4] } : undefined;
}

function inOrder({ first, second, year }: Parts, habit: DateHabit): DateReading {
  const dayFirst = inYear(year, second, first, habit);
  const monthFirst = inYear(year, first, second, habit);
  if (habit.order) return habit.order === 'day-month' ? dayFirst : monthFirst;
  if (!dayFirst || !monthFirst || first === second) return dayFirst ?? monthFirst;
  return { asks: 'order' };
}

/** Two digits of a year up to 69 are of this century, as in spreadsheets. */
function inYear(written: string | undefined, month: number | undefined, day: number, habit: DateHabit): DateReading {
  if (month === undefined) return undefined;
  // 2024 is a leap year: it has every day that a year can have.
  if (written === undefined && habit.year === undefined) return dated(2024, month, day) && { asks: 'year' };
  const number = written === undefined ? habit.year! : Number(written);
  return dated(written?.length === 2 ? number + (number < 70 ? 2000 : 1900) : number, month, day);
}

function dated(year: number, month: number, day: number): CellDate | undefined {
  const value = dayOf(year, month, day);
  return value === undefined ? undefined : { day: value };
}

/**
 * The order that the dates of a column show: one of them can be read in this order alone. Undefined where none does, or
 * where two contradict each other.
 */
export function orderShown(cells: readonly string[]): DateOrder | undefined {
  const shown = new Set<DateOrder>();
  for (const cell of cells.filter(({ length }) => length <= LONGEST)) {
    const parts = partsOf(cell.replace(/[T ]+\d{1,2}:\d{2}(?::\d{2})?$/, ''));
    if (!parts || parts.first === parts.second) continue;
    if (parts.first > 12 && parts.second <= 12) shown.add('day-month');
    if (parts.second > 12 && parts.first <= 12) shown.add('month-day');
  }
  const [only] = shown;
  return shown.size === 1 ? only : undefined;
}
