/** Quantities with their units: from an amount to a value, or to a problem at the very place. */
import {
  MOST_YEARS, spellingsOf, unitOf, yearsOf, type Dimension, type Duration, type Quantity, type Strength,
  type Temperature, type TemperatureUnit, type Volume,
} from '../model/quantity.ts';
import type { Placed } from '../model/record.ts';
import type { Amount } from './grammar.ts';
import { listed } from './nearest.ts';
import { readNumber } from './numbers.ts';
import { unitMeantBy } from './other-units.ts';
import { insertion, replacement, type LineReader } from './reader.ts';

const noun: Record<Dimension, string> = {
  mass: 'mass', volume: 'volume', strength: 'strength', duration: 'time', temperature: 'temperature', molarMass: 'molar mass',
};

/** The dimension of an amount's unit; undefined when it has no unit or one that is not known. */
export function dimensionOf({ unit }: Amount): Dimension | undefined {
  return unit && unitOf(unit.image)?.dimension;
}

/** The dimension of an amount whose unit is a mass or a volume but for small and capital letters: `20 Mg`. */
export function dimensionInOtherCase({ unit }: Amount): 'mass' | 'volume' | undefined {
  const lower = unit?.image.toLowerCase();
  return (['mass', 'volume'] as const).find(each => spellingsOf(each).some(spelling => spelling.toLowerCase() === lower));
}

/** A quantity of a dimension: above 0, or for a strength and for what is left from 0 up. */
export function readQuantity<Unit extends string>(
  reader: LineReader, amount: Amount, dimension: Dimension, mayBeNone = dimension === 'strength',
): Placed<Quantity<Unit>> | undefined {
  const unit = readUnit(reader, amount, dimension);
  if (unit === undefined) return undefined;
  const value = readNumber(reader, amount);
  if (value === undefined) return undefined;
  // 0 ppm is the lowest rung of a ladder; no time and no volume at all are slips.
  if (value < 0 || (value === 0 && !mayBeNone)) {
    reader.report('bad-number', amount, {
      written: reader.shown(amount), expected: `a ${noun[dimension]}`, suggestion: 'Write a number above 0 and its unit.',
    });
    return undefined;
  }
  const { start, end } = amount;
  const decimals = decimalsOf(amount.number.image);
  const quantity = decimals === 0 ? { value, unit: unit as Unit } : { value, unit: unit as Unit, decimals };
  return { value: quantity, start, end };
}

/** How many digits stand behind the point, where the last of them is a zero; 0 else. */
function decimalsOf(numeral: string): number {
  const point = numeral.endsWith('0') ? numeral.indexOf('.') : -1;
  const digits = numeral.length - point - 1;
  return point < 0 || digits > 20 ? 0 : digits;
}

/** The unit of an amount, as the formatter spells it; a problem when it is none of the dimension. */
function readUnit(reader: LineReader, amount: Amount, dimension: Dimension): string | undefined {
  const { unit, start, end } = amount;
  const found = unit && unitOf(unit.image);
  if (found?.dimension === dimension) return found.unit;
  const spellings = spellingsOf(dimension);
  const common = [...new Set(spellings.map(spelling => unitOf(spelling)?.unit ?? spelling))];
  if (!unit) {
    const written = reader.shown(amount);
    reader.report('missing-unit', { start, end }, { written, suggestion: `Write ${listed(common, 'or')} after it.` },
      common.slice(0, 3).map(each => insertion(end, ` ${each}`, `Change to “${written} ${each}”`)));
    return undefined;
  }
  const span = { start: unit.startOffset, end };
  const near = found ? undefined : unitMeantBy(unit.image, spellings);
  const suggestion = near ? `Did you mean “${near}”?` : `Write ${listed(common, 'or')}.`;
  reader.report('bad-unit', span, { unit: reader.shown(span), of: `of ${noun[dimension]}`, suggestion },
    near ? [replacement(span, near)] : []);
  return undefined;
}

export function readStrength(reader: LineReader, amount: Amount): Placed<Strength> | undefined {
  return readQuantity(reader, amount, 'strength');
}

export function readVolume(reader: LineReader, amount: Amount, mayBeNone = false): Placed<Volume> | undefined {
  return readQuantity(reader, amount, 'volume', mayBeNone);
}

/** A duration; months and years must come to whole calendar months, and no seed is waited for beyond MOST_YEARS. */
export function readDuration(reader: LineReader, amount: Amount): Placed<Duration> | undefined {
  const duration = readQuantity<Duration['unit']>(reader, amount, 'duration');
  if (!duration) return undefined;
  if (yearsOf(duration.value) > MOST_YEARS) {
    reader.report('bad-number', amount, {
      written: reader.shown(amount), expected: 'a time that can be right here', suggestion: `Write at most ${MOST_YEARS} years.`,
    });
    return undefined;
  }
  const { value, unit } = duration.value;
  const inMonths = unit === 'months' ? value : unit === 'years' ? value * 12 : 0;
  if (Number.isInteger(inMonths)) return duration;
  reader.report('bad-number', amount, {
    written: reader.shown(amount), expected: 'a whole number of months', suggestion: 'Write days or weeks.',
  });
  return undefined;
}

const pair = /^(-?\d+(?:\.\d+)?)\s?°?\s?[CF]?\s?\/\s?(-?\d+(?:\.\d+)?)\s?°?\s?([CF])$/;

/** Example: meantTemperatures('20 C / 10 C') is '20/10 C' */
export function meantTemperatures(text: string): string | undefined {
  const parts = text.length < 40 ? pair.exec(text) : undefined;
  return parts ? `${parts[1]!}/${parts[2]!} ${parts[3]!}` : undefined;
}

/** A temperature or a pair of day and night. */
export function readTemperature(reader: LineReader, amount: Amount): Placed<Temperature> | undefined {
  const unit = readUnit(reader, amount, 'temperature') as TemperatureUnit | undefined;
  if (!unit) return undefined;
  const { start, end } = amount;
  const { image } = amount.number;
  const pair = image.includes('/') ? /^(-?\d+(?:\.\d+)?)\/(-?\d+(?:\.\d+)?)$/.exec(image) : undefined;
  if (pair) return { start, end, value: { day: Number(pair[1]), night: Number(pair[2]), unit } };
  const day = readNumber(reader, amount);
  return day === undefined ? undefined : { start, end, value: { day, night: undefined, unit } };
}
