/** Shares of seed in plain words: never a percentage without what it is of, nor an interval without its name. */
import type { Interval } from '../measures/measured.ts';
import { wilson } from '../measures/proportion.ts';
import { rangeText, type SeedRange } from '../model/estimate.ts';

/**
 * A share as a percentage to one decimal place; one that is not quite nothing or everything does not round to it.
 *
 * Example: percentText(3 / 8) is '37.5', percentText(1 / 4000) is '<0.1'
 */
function percentText(share: number): string {
  if (share > 0 && share < 0.0005) return '<0.1';
  if (share < 1 && share >= 0.9995) return '>99.9';
  return String(Math.round(share * 1000) / 10);
}

/** The ends of a share, from 0 to 1, of seeds that were counted or estimated: the more seeds, the smaller it is. */
export function shareLimits(x: number, n: number | SeedRange): Interval {
  const { least, most } = seedRange(n);
  return { low: x / most, high: x / least };
}

/** Wilson's interval; of seeds that were estimated what the intervals of all numbers of them take in. */
export function wilsonLimits(x: number, n: number | SeedRange): Interval {
  const { least, most } = seedRange(n);
  return { low: wilson(x, most).low, high: wilson(x, least).high };
}

export function seedRange(n: number | SeedRange): SeedRange {
  return typeof n === 'number' ? { least: n, most: n } : n;
}

/** Example: '24'; of seeds that were estimated '22 to 26' */
export function ofText(n: number | SeedRange): string {
  return rangeText(seedRange(n));
}

function limitsText({ low, high }: Interval): string {
  const [from, to] = [percentText(low), percentText(high)];
  return from === to ? from : `${from} to ${to}`;
}

/**
 * A share with its interval, for a table that names the interval below.
 *
 * Example: shortShareText(17, 20) is '85 % (64 to 94.8)'
 */
export function shortShareText(x: number, n: number | SeedRange): string {
  const { low, high } = wilsonLimits(x, n);
  return `${limitsText(shareLimits(x, n))} % (${percentText(low)} to ${percentText(high)})`;
}

/**
 * Example: shareText(17, 20) is '17 of 20 = 85 %'; of 18 to 22 seeds '17 of 18 to 22 = 77.3 to 94.4 %'
 */
export function shareText(x: number, n: number | SeedRange): string {
  return `${x} of ${ofText(n)} = ${limitsText(shareLimits(x, n))} %`;
}

/**
 * Example: intervalText(17, 20) is '95 % Wilson interval 64 to 94.8 %'
 */
export function intervalText(x: number, n: number | SeedRange): string {
  const { low, high } = wilsonLimits(x, n);
  const over = typeof n === 'number' ? 'interval' : 'intervals';
  return `95 % Wilson ${over} ${percentText(low)} to ${percentText(high)} %`;
}
