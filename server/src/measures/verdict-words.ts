import { counted } from '../model/counted.ts';
import type { DayLimits } from './half-up.ts';
import type { Interval } from './measured.ts';
import type { VerdictName } from './verdict-rules.ts';

/** Example: 'worth repeating so far'; `open`: seed may still germinate and change it. */
export function verdictWords(verdict: VerdictName, open: boolean): string {
  const soFar = verdict === 'cannot tell' ? ' yet' : ' so far';
  return `${verdict}${open ? soFar : ''}`;
}

/** A verdict with its reason as one sentence. */
export function asSentence(verdict: VerdictName, reason: string, open: boolean): string {
  const words = verdictWords(verdict, open);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${reason}.`;
}

/**
 * A share, or a difference of shares, in whole percent: a half goes away from 0, on either side. What verdicts and
 * tables show is rounded here, so that no two places round one number differently.
 *
 * @example
 * wholePercent(-0.375) // -38
 */
export function wholePercent(share: number): number {
  return Math.sign(share) * Math.round(100 * Math.abs(share) + ROUNDING);
}

/** A share from 0 to 1 as whole percent. */
export function percent(share: number): string {
  return `${wholePercent(share)} %`;
}

/**
 * The limits of a difference in percentage points: whole ones, or tenths where whole ones would hide on which side of
 * no difference a limit lies.
 *
 * @example
 * limitsText({ low: 0.181, high: 0.65 }) // '18 to 65'
 * limitsText({ low: 0.0042, high: 0.31 }) // '0.4 to 31'
 */
export function limitsText({ low, high }: Interval): string {
  return `${points(low)} to ${points(high)}`;
}

/** Example: pointsText(0.24) is '24 points' */
export function pointsText(share: number): string {
  return counted(wholePercent(share), 'point');
}

/** The limit that an interval is shown with. Example: limitText(0.294) is '29 points' */
export function limitText(share: number): string {
  return wholePercent(share) === 0 ? `${points(share)} points` : pointsText(share);
}

function points(share: number): string {
  const whole = wholePercent(share);
  return String(whole === 0 ? Math.round(1000 * share) / 10 : whole);
}

/** A p-value with two digits. */
export function probability(p: number): string {
  return p < 0.001 ? 'below 0.001' : p.toPrecision(2);
}

/** A ratio with two digits. */
export function ratio(value: number): string {
  return value < 10 ? value.toPrecision(2) : value.toFixed(0);
}

/**
 * A day that lies between two looks, in whole days. That it was after day 0 takes no look; a look before day 0 is one
 * like any other.
 *
 * @example
 * dayText({ after: 21, by: 28 }) // 'day 21 to 28'
 * dayText({ after: -56, by: -24 }) // 'day -56 to -24'
 * dayText({ after: 0, by: 86 }) // 'before day 86'
 */
export function dayText({ after, by }: DayLimits): string {
  return after === undefined || after === 0 ? `before day ${by}` : `day ${after} to ${by}`;
}

/**
 * Days between two limits, in whole days: rounded down and up, so that they hold. A mean day may lie before day 0.
 *
 * @example
 * daysBetween(4.2, 9.3) // '4 to 10'
 * daysBetween(-33, 48) // '-33 to 48'
 * daysBetween(0, 86) // 'up to 86'
 */
export function daysBetween(low: number | undefined, high: number): string {
  const [from, to] = [Math.floor((low ?? 0) + ROUNDING), Math.ceil(high - ROUNDING)];
  return from === 0 ? `up to ${to}` : from === to ? `${to}` : `${from} to ${to}`;
}

/** A mean of whole days, or half a percent, may be missed by the last digit. */
const ROUNDING = 1e-9;
