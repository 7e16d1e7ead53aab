/** When two numbers of a bench are one and the same. Common practice, no source. */
import { SAME_SOWING_DAYS } from '../calendar/together.ts';
import { SAME_SHARE } from '../solutions/comparison.ts';

/** Of a time. */
const ABOUT_SHARE = 0.2;

/** Seed that lies unsown in the cold grows no less ready by so many days less of it. */
const SAME_COLD_DAYS = 7;

/** Thermometers of a bench agree no better. */
const SAME_CELSIUS = 1;

export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Example: isSameDose(500, 511) is true, isSameDose(500, 550) is not */
export function isSameDose(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_SHARE * Math.max(a, b);
}

/** Whether two lengths that are known within limits may be the same; what is not known may be. */
export function mayBeSameLength(a: Range | undefined, b: Range | undefined): boolean {
  if (!a || !b) return true;
  return a.least <= b.most * (1 + SAME_SHARE) && b.least <= a.most * (1 + SAME_SHARE);
}

/** Whether two soaks may have been about as long, within a fifth: what is longer wets seed more. */
export function isAboutAsLong(a: Range, b: Range): boolean {
  return a.least <= b.most * (1 + ABOUT_SHARE) && b.least <= a.most * (1 + ABOUT_SHARE);
}

/**
 * Days from day 0 on which something was done to two batches. Seed germinates within days once it comes out of the
 * cold, so a share of the time before allows nothing: two weeks sooner are two weeks ahead.
 */
export function isSameDay(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_SOWING_DAYS;
}

/** The same of a cold stage, which may have begun sooner where the cold ended with the sowing. */
export function isSameColdDay(a: number, b: number): boolean {
  const allowed = Math.min(SAME_COLD_DAYS, ABOUT_SHARE * Math.max(-a, -b));
  return isSameDay(a, b) || (a < 0 && b < 0 && Math.abs(a - b) <= allowed);
}

export function isSameWarmth(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_CELSIUS;
}
