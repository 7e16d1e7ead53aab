/** A winter as growers name it: 2025/26 runs over the turn of the year, 2026 is one south of the equator. */
import { dayOf, isoOf, type Day } from './day.ts';
import { isSouthern } from './southern.ts';

export interface Winter {
  /** As it is named: `2025/26`, or `2026` for a year by itself. */
  readonly name: string;
  readonly first: Day;
  readonly last: Day;
}

/**
 * North of the equator a winter begins on 1 July and ends on 30 June, so that the autumn's sowings and the spring's
 * seedlings belong to it. South of it the year by itself holds the winter. Common practice, no source. Undefined for
 * what names neither.
 *
 * Example: winterNamed('2025/26') is from 2025-07-01 to 2026-06-30, winterNamed('2026') from 2026-01-01 to 2026-12-31
 */
export function winterNamed(text: string): Winter | undefined {
  const [, from = '', to] = /^(\d{4})(?:[/-](\d{2}|\d{4}))?$/.exec(text.trim()) ?? [];
  if (from === '') return undefined;
  const year = Number(from);
  if (to === undefined) return spanOf(from, dayOf(year, 1, 1), dayOf(year, 12, 31));
  if (to !== String(year + 1) && to !== String(year + 1).slice(2)) return undefined;
  return spanOf(`${from}/${String(year + 1).slice(2)}`, dayOf(year, 7, 1), dayOf(year + 1, 6, 30));
}

function spanOf(name: string, first: Day | undefined, last: Day | undefined): Winter | undefined {
  return first === undefined || last === undefined ? undefined : { name, first, last };
}

/**
 * The winter that a day is in, by its name. The zone of the journal tells the half of the earth: without one the north.
 *
 * Example: winterOf of 2026-07-11 is '2026/27', and '2026' in Pacific/Auckland
 */
export function winterOf(day: Day, zone: string | undefined): string {
  const [year, month] = isoOf(day).split('-').map(Number);
  if (isSouthern(zone)) return String(year);
  const from = month! < 7 ? year! - 1 : year!;
  return `${from}/${String(from + 1).slice(-2)}`;
}
