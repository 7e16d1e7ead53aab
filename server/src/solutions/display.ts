/** Exact amounts as numbers and words for people. */
import type { MassUnit, StrengthUnit, VolumeUnit } from '../model/quantity.ts';
import { withoutEnd } from '../text/without-end.ts';
import { type Exact, mgPer, mlPer, powerOfTen } from './amounts.ts';

/** An amount in the unit that a person would read it in. */
export interface Shown<Unit extends string = string> {
  /** Not rounded, but for the last bit of a double. */
  readonly value: number;
  readonly unit: Unit;
  /** Number and unit, rounded where the exact number is long. */
  readonly text: string;
  /** Whether `text` is the exact amount. */
  readonly exact: boolean;
}

/** Digits of a strength that was worked out from what was weighed and measured. */
const MADE_DIGITS = 3;
/** Digits shown of a number that has no short exact form. */
const DIGITS = 4;
/** A decimal with so many digits or fewer is shown as it is. */
const SHORT = 6;
/** Enough for a double to come out as the nearest. */
const DOUBLE = 25;
/** A larger or smaller power of ten is shown as an exponent. */
const LARGEST = 15;
const SMALLEST = -9;

/** The power of ten of the first digit: 0 for 5, -3 for 0.005. `x` is not zero. */
function magnitude(x: Exact): number {
  const guess = String(x.n).length - String(x.d).length;
  return x.abs().compare(powerOfTen(guess)) < 0 ? guess - 1 : guess;
}

/**
 * The decimal text of a number rounded, half away from zero, to so many digits behind the point; no zeros
 * at the end.
 */
function fixed(x: Exact, places: number): string {
  const scaled = x.abs().mul(powerOfTen(places));
  const whole = (2n * scaled.n + scaled.d) / (2n * scaled.d);
  const digits = String(whole).padStart(places + 1, '0');
  const point = digits.length - places;
  const fraction = withoutEnd(digits.slice(point), '0');
  const sign = x.s < 0n && whole > 0n ? '-' : '';
  return `${sign}${digits.slice(0, point)}${fraction === '' ? '' : `.${fraction}`}`;
}

/** The nearest double. */
export function toNumber(x: Exact): number {
  if (x.n === 0n) return 0;
  const size = magnitude(x);
  const places = Math.max(0, DOUBLE - size);
  return Number(fixed(x, places));
}

/**
 * A number as people write it: a decimal of up to six digits as it is, a longer one to four digits, whole
 * digits always kept.
 *
 * Example: numberText(exact(1000).div(18)) is { text: '55.56', exact: false }
 */
export function numberText(x: Exact, digits = DIGITS): { readonly text: string; readonly exact: boolean } {
  if (x.n === 0n) return { text: '0', exact: true };
  const size = magnitude(x);
  if (size >= LARGEST || size < SMALLEST) return { text: toNumber(x).toExponential(DIGITS - 1), exact: false };
  const short = fixed(x, Math.max(0, SHORT - 1 - size));
  if (x.equals(short)) return { text: short, exact: true };
  return { text: fixed(x, Math.max(0, digits - 1 - size)), exact: false };
}

/** The texts of two numbers with as many digits as it takes to see which is the larger. */
export function apartText(a: Exact, b: Exact): [string, string] {
  for (let digits = DIGITS; digits < DOUBLE; digits += 1) {
    const texts: [string, string] = [numberText(a, digits).text, numberText(b, digits).text];
    if (texts[0] !== texts[1] || a.equals(b)) return texts;
  }
  return [String(toNumber(a)), String(toNumber(b))];
}

function shown<Unit extends string>(x: Exact, unit: Unit): Shown<Unit> {
  const number = numberText(x);
  return { value: toNumber(x), unit, text: `${number.text} ${unit.replace(/^u/, 'µ')}`, exact: number.exact };
}

/** Example: showMass(exact(1500)).text is '1.5 g' */
export function showMass(mg: Exact): Shown<MassUnit> {
  const size = mg.abs();
  let unit: MassUnit = 'mg';
  if (size.gte(mgPer.kg)) unit = 'kg';
  else if (size.gte(mgPer.g)) unit = 'g';
  else if (isBelowTenth(size)) unit = 'ug';
  return shown(mg.div(mgPer[unit]), unit);
}

/**
 * A volume in L, mL or, below a tenth of a mL, uL; on a micropipette everything below 1 mL is in uL.
 *
 * Example: showVolume(exact(0.5)).text is '0.5 mL'; showVolume(exact(0.5), true).text is '500 µL'
 */
export function showVolume(ml: Exact, micropipette = false): Shown<VolumeUnit> {
  const size = ml.abs();
  let unit: VolumeUnit = 'mL';
  if (size.gte(mlPer.L)) unit = 'L';
  else if (isBelowTenth(size) || (micropipette && size.lt(1) && size.n !== 0n)) unit = 'uL';
  return shown(ml.div(mlPer[unit]), unit);
}

export function showStrength<Unit extends StrengthUnit>(value: Exact, unit: Unit): Shown<Unit> {
  return shown(value, unit);
}

/**
 * A strength with the digits that it deserves: masses and volumes are read to about one part in a hundred, so what is
 * made from them has three digits; whole digits always stay. Common practice, no source.
 *
 * Example: showMade(exact('498.96'), 'ppm').text is '499 ppm'
 */
export function showMade<Unit extends StrengthUnit>(value: Exact, unit: Unit): Shown<Unit> {
  const full = shown(value, unit);
  if (value.n === 0n || full.text.includes('e')) return full;
  const text = fixed(value, Math.max(0, MADE_DIGITS - 1 - magnitude(value)));
  return { ...full, text: `${text} ${unit.replace(/^u/, 'µ')}`, exact: value.equals(text) };
}

/** Example: percentText(new Fraction(1, 3)) is '33.3 %' */
export function percentText(share: Exact): string {
  return `${numberText(share.mul(100), 3).text} %`;
}

function isBelowTenth(size: Exact): boolean {
  return size.n !== 0n && size.lt(powerOfTen(-1));
}

/** What stands before a strength that is not known exactly: of what was past its time at most so much is left. */
export function strengthSign({ isAtMost, isAbout }: { readonly isAtMost: boolean; readonly isAbout: boolean }): string {
  if (isAtMost) return 'at most ';
  return isAbout ? 'about ' : '';
}
