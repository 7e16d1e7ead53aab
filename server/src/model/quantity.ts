/**
 * Numbers with units as growers write them. A value is the decimal that was written; conversions that must be exact go
 * through solutions/amounts.ts.
 */
import { addMonths, LAST_DAY, type Day } from './day.ts';

export type MassUnit = 'kg' | 'g' | 'mg' | 'ug';
export type VolumeUnit = 'L' | 'mL' | 'uL';
export type StrengthUnit = 'ppm' | 'mg/L' | 'g/L' | '%' | 'mM' | 'uM';
export type DurationUnit = 'min' | 'h' | 'days' | 'weeks' | 'months' | 'years';
export type TemperatureUnit = 'C' | 'F';
export type MolarMassUnit = 'g/mol';

export interface Quantity<Unit> {
  readonly value: number;
  readonly unit: Unit;
  /** Digits behind the point as written, where zeros at the end make them more than `value` has: 1 for 20.0. */
  readonly decimals?: number;
}

export type Mass = Quantity<MassUnit>;
export type Volume = Quantity<VolumeUnit>;
export type Strength = Quantity<StrengthUnit>;
export type Duration = Quantity<DurationUnit>;

/** A constant temperature, or one of the day and one of the night. */
export interface Temperature {
  readonly day: number;
  readonly night: number | undefined;
  readonly unit: TemperatureUnit;
}

export type Dimension = 'mass' | 'volume' | 'strength' | 'duration' | 'temperature' | 'molarMass';

interface UnitSpelling {
  readonly dimension: Dimension;
  readonly unit: string;
  /** How the formatter writes it; `u` where the line may have a micro sign. */
  readonly printed: string;
}

/** Each row: the unit that is meant, how the formatter writes it, and what else growers write. */
const spellings: Record<Dimension, readonly (readonly [unit: string, printed: string, ...others: string[]])[]> = {
  mass: [['kg', 'kg'], ['g', 'g', 'gram', 'grams'], ['mg', 'mg'], ['ug', 'ug', 'mcg']],
  volume: [['L', 'L', 'l', 'litre', 'litres', 'liter', 'liters'], ['mL', 'mL', 'ml', 'ML'], ['uL', 'uL', 'ul']],
  strength: [
    ['ppm', 'ppm', 'PPM'], ['mg/L', 'mg/L', 'mg/l'], ['g/L', 'g/L', 'g/l'], ['%', '%'], ['mM', 'mM'], ['uM', 'uM'],
    // The same strengths in other words: the formatter leaves the words to the grower.
    ['g/L', 'mg/mL', 'mg/ml'], ['mg/L', 'ug/mL', 'ug/ml'], ['mM', 'mmol/L', 'mmol/l'], ['uM', 'umol/L', 'umol/l'],
  ],
  duration: [
    ['min', 'min', 'mins', 'minute', 'minutes'], ['h', 'h', 'hr', 'hrs', 'hour', 'hours'], ['days', 'days', 'day', 'd'],
    ['weeks', 'weeks', 'week', 'wk', 'wks'], ['months', 'months', 'month'], ['years', 'years', 'year'],
  ],
  temperature: [['C', 'C', 'c'], ['C', '°C', '° C', '℃'], ['F', 'F', 'f'], ['F', '°F', '° F', '℉']],
  molarMass: [['g/mol', 'g/mol']],
};

const bySpelling = new Map<string, UnitSpelling>();
for (const dimension of Object.keys(spellings) as Dimension[]) {
  for (const [unit, printed, ...others] of spellings[dimension]) {
    for (const spelling of [printed, ...others]) {
      // The micro sign, and the Greek letter that looks the same.
      const micro = spelling.startsWith('u') ? ['\u00b5', '\u03bc'].map(sign => sign + spelling.slice(1)) : [];
      // Capitals tell mM from MM, but nothing of a word.
      const words = dimension === 'duration' && spelling.length > 1
        ? [spelling.toUpperCase(), spelling.charAt(0).toUpperCase() + spelling.slice(1)] : [];
      for (const each of [spelling, ...micro, ...words]) bySpelling.set(each, { dimension, unit, printed });
    }
  }
}

/** The unit that a spelling means; both micro signs are read as u. Undefined when it is no unit. */
export function unitOf(spelling: string): UnitSpelling | undefined {
  return bySpelling.get(spelling);
}

/** Every accepted spelling of the units of a dimension, with u for the micro signs. */
export function spellingsOf(dimension: Dimension): string[] {
  return spellings[dimension].flatMap(([, ...written]) => written);
}

/** Minutes of a duration given in minutes, hours, days or weeks; undefined for calendar months and years. */
export function minutesOf({ value, unit }: Duration): number | undefined {
  switch (unit) {
    case 'min': return value;
    case 'h': return value * 60;
    case 'days': return value * 1440;
    case 'weeks': return value * 10_080;
    default: return undefined;
  }
}

/** Seeds wait long, but for no longer than this does a grower: beyond it the number or the unit is a slip. */
export const MOST_YEARS = 100;

/** About how many years a duration is. */
export function yearsOf(duration: Duration): number {
  const minutes = minutesOf(duration);
  if (minutes !== undefined) return minutes / (365.25 * 1440);
  return duration.unit === 'years' ? duration.value : duration.value / 12;
}

/**
 * The day on which a stage of this duration that began on `start` ends. Parts of a day count as a whole one.
 * Nothing ends after LAST_DAY, however many stages there are.
 *
 * Example: dayAfter(dayOf(2026, 1, 1), { value: 12, unit: 'weeks' }) is dayOf(2026, 3, 26)
 */
export function dayAfter(start: Day, duration: Duration): Day {
  const minutes = minutesOf(duration);
  const end = minutes === undefined
    ? addMonths(start, Math.round(duration.value * (duration.unit === 'years' ? 12 : 1)))
    : start + Math.ceil(minutes / 1440);
  return Math.min(end, LAST_DAY);
}

/** Degrees Celsius. */
export function celsius(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : ((value - 32) * 5) / 9;
}

/**
 * A quantity as it is printed: the number as written, a blank, the unit; singular units where the number is one.
 *
 * Example: printQuantity({ value: 12, unit: 'weeks' }) is '12 weeks'; with two decimals it is '12.00 weeks'
 */
export function printQuantity({ value, unit, decimals }: Quantity<string>): string {
  const singular = value === 1 && decimals === undefined && /^(days|weeks|months|years)$/.test(unit) ? unit.slice(0, -1) : unit;
  return `${decimals === undefined ? value : value.toFixed(decimals)} ${singular}`;
}

/** Example: printTemperature({ day: 20, night: 10, unit: 'C' }) is '20/10 C' */
export function printTemperature({ day, night, unit }: Temperature): string {
  return night === undefined ? `${day} ${unit}` : `${day}/${night} ${unit}`;
}
