/** Days in plain words. */
import { counted } from '../model/counted.ts';
import { addMonths, dayOfIso, isoOf, type Day } from '../model/day.ts';
import { once } from '../model/once.ts';
import type { DaySpan, FactOfType } from '../model/record.ts';

const relative = once(() => new Intl.RelativeTimeFormat('en', { numeric: 'auto' }));

/** Whole calendar months between two days, the earlier one first. */
function monthsBetween(from: Day, to: Day): number {
  // No month is shorter than 28 days, so this is never too few.
  let months = Math.floor((to - from) / 28);
  while (addMonths(from, months) > to) months--;
  return months;
}

/**
 * How long ago a day was, or in how long it comes, in whole units.
 *
 * Example: 73 days before today is '10 weeks ago', tomorrow is 'tomorrow'
 */
export function agoText(day: Day, today: Day): string {
  const days = day - today;
  const sign = Math.sign(days);
  if (Math.abs(days) < 14) return relative().format(days, 'day');
  if (Math.abs(days) < 120) return relative().format(Math.trunc(days / 7), 'week');
  const months = monthsBetween(Math.min(day, today), Math.max(day, today));
  return months < 24 ? relative().format(sign * months, 'month') : relative().format(sign * Math.floor(months / 12), 'year');
}

const numbers = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/**
 * The same with a small number as a word, for the middle of a sentence.
 *
 * Example: three years before it is 'three years ago'
 */
export function agoInWords(day: Day, today: Day): string {
  return agoText(day, today).replace(/^\d+/, digits => numbers[Number(digits) - 2] ?? digits);
}

/**
 * A number of days in words.
 *
 * Example: daysText(1) is '1 day'
 */
export function daysText(days: number): string {
  return counted(days, 'day');
}

/**
 * When the seed of a lot was collected.
 *
 * Example: '2025-09', of two harvests in one packet '2024 and 2025'
 */
export function collectedText({ when, harvests }: FactOfType<'collected'>): string {
  return (harvests ?? [when.value]).map(daySpanText).join(' and ');
}

/** A date as precise as it was written: a day, a month or a year. */
export function daySpanText({ first, last }: DaySpan): string {
  const iso = isoOf(first);
  if (first === last) return iso;
  const year = iso.slice(0, 4);
  return last === dayOfIso(`${year}-12-31`) && first === dayOfIso(`${year}-01-01`) ? year : iso.slice(0, 7);
}
