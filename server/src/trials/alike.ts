/** When two numbers of a bench are one and the same. Common practice, no source. */
import { SAME_SHARE } from '../solutions/comparison.ts';

/** A stage that begins a day or two, or a fifth of its time, sooner or later is the same stage. */
const SAME_STAGE_DAYS = 3;
const SAME_STAGE_SHARE = 0.2;

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
  return a.least <= b.most * (1 + SAME_STAGE_SHARE) && b.least <= a.most * (1 + SAME_STAGE_SHARE);
}

/** Days from day 0 on which a stage began, in two batches. */
export function isSameStageDay(a: number, b: number): boolean {
  return Math.abs(a - b) <= Math.max(SAME_STAGE_DAYS, SAME_STAGE_SHARE * Math.max(Math.abs(a), Math.abs(b)));
}

export function isSameWarmth(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_CELSIUS;
}
