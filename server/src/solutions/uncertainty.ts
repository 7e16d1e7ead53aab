/** How far a strength may be off, from what the record tells of balance, volume and halving by eye. */
import type { Quantity, VolumeUnit } from '../model/quantity.ts';
import { type Exact, exact, powerOfTen, volumeInMl } from './amounts.ts';
import { percentText } from './display.ts';

/**
 * A measured quantity. `decimals` counts the digits written behind the point, zeros at the end included
 * (20.0 mg has one); left out, those of the number itself count.
 */
export type Measured<Unit extends string> = Quantity<Unit> & { readonly decimals?: number | undefined };

/** Outer limits in the unit of what they bound. */
export interface Limits {
  readonly low: Exact;
  readonly high: Exact;
}

export type Uncertainty =
  | ({
    readonly kind: 'interval';
    /** What the limits allow for, in words. */
    readonly counted: readonly string[];
    readonly notCounted: readonly string[];
  } & Limits)
  | { readonly kind: 'none'; readonly why: string };

/** Each half holds between 45 and 55 % of what was halved: common practice, no source. */
export const HALVING_ERROR = exact(0.1);

/** A number whose last place is coarser than this share of it does not tell how finely it was measured. */
const COARSEST = exact(0.2);

function decimalsOf({ value, decimals }: Measured<string>): number {
  if (decimals !== undefined) return decimals;
  const [digits = '', exponent = '0'] = String(value).split('e');
  return (digits.split('.')[1] ?? '').length - Number(exponent);
}

/**
 * Half a unit of the last digit written, relative to the number; undefined where that tells nothing (`1
 * g`).
 */
export function readingError(measured: Measured<string>): Exact | undefined {
  if (!(measured.value > 0)) return undefined;
  const error = powerOfTen(-decimalsOf(measured)).div(2).div(exact(measured.value));
  return error.lte(COARSEST) ? error : undefined;
}

/**
 * The limits of an amount with relative errors of its factors, and of its divisors, all at their worst at
 * once.
 */
export function limitsOf(amount: Exact, factors: readonly Exact[], divisors: readonly Exact[]): Limits {
  const one = exact(1);
  let { low, high } = { low: amount, high: amount };
  for (const error of factors) {
    low = low.mul(one.sub(error));
    high = high.mul(one.add(error));
  }
  for (const error of divisors) {
    low = low.div(one.add(error));
    high = high.div(one.sub(error));
  }
  return { low, high };
}

export function readingText(what: string, { unit }: Measured<string>, error: Exact): string {
  return `${what} read to the last digit written in ${unit} (${percentText(error)})`;
}

export function noReadingText(what: string, { value, unit }: Measured<string>): string {
  return `“${value} ${unit}” does not say how finely the ${what} was measured. Write all the digits that the tool shows.`;
}

/**
 * The limits of a stock carried over to a dilution of it, with the errors of the two volumes; volumes above
 * zero.
 */
export function dilutedUncertainty(
  stock: Uncertainty,
  taken: Measured<VolumeUnit>,
  to: Measured<VolumeUnit>,
): Uncertainty {
  if (stock.kind === 'none') return stock;
  const takenError = readingError(taken);
  const toError = readingError(to);
  if (takenError === undefined) return { kind: 'none', why: noReadingText('volume', taken) };
  if (toError === undefined) return { kind: 'none', why: noReadingText('volume', to) };
  const { low, high } = limitsOf(volumeInMl(taken).div(volumeInMl(to)), [takenError], [toError]);
  return {
    ...stock,
    low: stock.low.mul(low),
    high: stock.high.mul(high),
    counted: [
      ...stock.counted,
      readingText('volume taken', taken, takenError),
      readingText('volume made up to', to, toError),
    ],
  };
}
