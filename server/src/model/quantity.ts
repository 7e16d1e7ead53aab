/**
 * Numbers with units as growers write them. A value is the decimal that was written; conversions that must be exact go
 * through solutions/amounts.ts.
 */
import { addMonths, type Day } from './day.ts';

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
  /** The spelling that the formatter writes. */
  readonly unit: string;
}

const spellings: Record<Dimension, Record<string, string>> = {
  mass: { kg: 'kg', g: 'g', gram: 'g', grams: 'g', mg: 'mg', ug: 'ug', mcg: 'ug' },
  volume: { L: 'L', l: 'L', litre: 'L', litres: 'L', liter: 'L', liters: 'L', mL: 'mL', ml: 'mL', ML: 'mL', uL: 'uL', ul: 'uL' },
  strength: {
    ppm: 'ppm', PPM: 'ppm', 'mg/L': 'mg/L', 'mg/l': 'mg/L', 'g/L': 'g/L', 'g/l': 'g/L', '%': '%',
    'mg/mL': 'g/L', 'mg/ml': 'g/L', 'ug/mL': 'mg/L', 'ug/ml': 'mg/L',
    mM: 'mM', 'mmol/L': 'mM', 'mmol/l': 'mM', uM: 'uM', 'umol/L': 'uM', 'umol/l': 'uM',
  },
  duration: {
    min: 'min', mins: 'min', minute: 'min', minutes: 'min', h: 'h', hr: 'h', hrs: 'h', hour: 'h', hours: 'h',
    d: 'days', day: 'days', days: 'days', week: 'weeks', weeks: 'weeks', wk: 'weeks', wks: 'weeks',
    month: 'months', months: 'months', year: 'years', years: 'years',
  },
  temperature: { C: 'C', '°C': 'C', '° C': 'C', '℃': 'C', c: 'C', F: 'F', '°F': 'F', '° F': 'F', '℉': 'F', f: 'F' },
  molarMass: { 'g/mol': 'g/mol' },
};

const bySpelling = new Map<string, UnitSpelling>();
for (const [dimension, units] of Object.entries(spellings)) {
  for (const [spelling, unit] of Object.entries(units)) {
    const meaning = { dimension: dimension as Dimension, unit };
    bySpelling.set(spelling, meaning);
    // The micro sign, and the Greek letter that looks the same.
    for (const micro of ['\u00b5', '\u03bc']) {
      if (spelling.startsWith('u')) bySpelling.set(micro + spelling.slice(1), meaning);
    }
  }
}

/** The unit that a spelling means; both micro signs are read as u. Undefined when it is no unit. */
export function unitOf(spelling: string): UnitSpelling | undefined {
  return bySpelling.get(spelling);
}

/** Every accepted spelling of the units of a dimension. */
export function spellingsOf(dimension: Dimension): string[] {
  return Object.keys(spellings[dimension]);
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

/**
 * The day on which a stage of this duration that began on `start` ends. Parts of a day count as a whole one.
 *
 * Example: dayAfter(dayOf(2026, 1, 1), { value: 12, unit: 'weeks' }) is dayOf(2026, 3, 26)
 */
export function dayAfter(start: Day, duration: Duration): Day {
  const minutes = minutesOf(duration);
  if (minutes !== undefined) return start + Math.ceil(minutes / 1440);
  return addMonths(start, Math.round(duration.value * (duration.unit === 'years' ? 12 : 1)));
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
