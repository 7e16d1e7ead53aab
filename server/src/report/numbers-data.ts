/** Numbers of the measures as plain data: a number, or `{ "undefined": reason }` where it cannot be given. */
import type { Contrast } from '../measures/contrast.ts';
import type { GerminationTime } from '../measures/germination-time.ts';
import type { LogRank } from '../measures/log-rank.ts';
import { isUndefined, type Measured, type Undefined } from '../measures/measured.ts';
import type { Proportion } from '../measures/proportion.ts';

export function numberData(measured: Measured): number | Undefined {
  return isUndefined(measured) ? measured : measured.value;
}

export function shareData(share: Proportion | Undefined): object {
  if (isUndefined(share)) return share;
  const { x, n, value, wilson, exact } = share;
  return { count: x, of: n, share: value, wilson, clopperPearson: exact };
}

/** A day by interpolation, with the checks between which it lies; as limits too. */
export function timeData(time: GerminationTime | Undefined): object {
  return isUndefined(time) ? time : { day: time.value, after: numberData(time.after), by: time.by, lower: limitOf(
    time.after), upper: time.by };
}

/** `null` where there is no limit. */
export function limitOf(number: Measured): number | null {
  return isUndefined(number) ? null : number.value;
}

/** A share on both sides: counts, the difference with its interval, Fisher's test. */
export function contrastData(contrast: Contrast | Undefined): object {
  if (isUndefined(contrast)) return contrast;
  const { treated, untreated, difference, fisher } = contrast;
  const side = ({ x, n }: typeof treated) => ({ count: x, of: n });
  return { treated: side(treated), untreated: side(untreated), difference, fisher };
}

export function logRankData(test: LogRank | Undefined): object {
  if (isUndefined(test)) return test;
  const { observed, expected, variance, chiSquare, p } = test;
  return { observed, expected, variance, chiSquare, p };
}
