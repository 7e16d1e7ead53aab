/** Shares of seed in plain words: never a percentage without what it is of, nor an interval without its name. */
import { wilson } from '../../measures/proportion.ts';

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

/**
 * A share with its interval, for a table that names the interval below.
 *
 * Example: shortShareText(17, 20) is '85 % (64 to 94.8)'
 */
export function shortShareText(x: number, n: number): string {
  const { low, high } = wilson(x, n);
  return `${percentText(x / n)} % (${percentText(low)} to ${percentText(high)})`;
}

/**
 * Example: shareText(17, 20) is '17 of 20 = 85 %'
 */
export function shareText(x: number, n: number): string {
  return `${x} of ${n} = ${percentText(x / n)} %`;
}

/**
 * Example: intervalText(17, 20) is '95 % Wilson interval 64 to 94.8 %'
 */
export function intervalText(x: number, n: number): string {
  const { low, high } = wilson(x, n);
  return `95 % Wilson interval ${percentText(low)} to ${percentText(high)} %`;
}
