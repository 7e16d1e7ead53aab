/**
 * Exact amounts. Inside solutions/ a mass is a rational number of mg, a volume of mL, and a strength of
 * ppm: mg in 1 L, or for a liquid measured by volume uL in 1 L. Nothing is rounded before it is shown.
 */
import Fraction from 'fraction.js';
import type { Mass, MassUnit, Volume, VolumeUnit } from '../model/quantity.ts';

export type Exact = Fraction;

/**
 * The rational number that the shortest decimal text of a number says: 0.1 is one tenth.
 *
 * @throws RangeError when the number is not finite
 */
export function exact(value: number): Exact {
  if (!Number.isFinite(value)) throw new RangeError(`no exact amount: ${value}`);
  const [digits = '', exponent = '0'] = String(value).split('e');
  return new Fraction(digits).mul(powerOfTen(Number(exponent)));
}

export function powerOfTen(exponent: number): Exact {
  const power = 10n ** BigInt(Math.abs(exponent));
  return exponent < 0 ? new Fraction(1n, power) : new Fraction(power, 1n);
}

/** One unit in mg. */
export const mgPer: Readonly<Record<MassUnit, Exact>> = {
  kg: exact(1e6),
  g: exact(1000),
  mg: exact(1),
  ug: exact(0.001),
};

/** One unit in mL. */
export const mlPer: Readonly<Record<VolumeUnit, Exact>> = {
  L: exact(1000),
  mL: exact(1),
  uL: exact(0.001),
};

export function massInMg({ value, unit }: Mass): Exact {
  return exact(value).mul(mgPer[unit]);
}

export function volumeInMl({ value, unit }: Volume): Exact {
  return exact(value).mul(mlPer[unit]);
}

/** mg of substance in a volume (mL) of a strength (mg/L). */
export function dissolvedMg(mgPerL: Exact, ml: Exact): Exact {
  return mgPerL.mul(ml).div(1000);
}

/** mg/L of a mass (mg) in a volume (mL), which must not be zero. */
export function strengthOf(mg: Exact, ml: Exact): Exact {
  return mg.mul(1000).div(ml);
}

/** mL of a strength (mg/L, not zero) that hold a mass (mg). */
export function volumeHolding(mg: Exact, mgPerL: Exact): Exact {
  return mg.mul(1000).div(mgPerL);
}

export function isPositive(x: Exact): boolean {
  return x.compare(0) > 0;
}
