/** Dates, times, numbers and quantities: from pieces to values, or to a problem at the very place. */
import type { IToken } from 'chevrotain';
import { dayOf, isoOf } from '../model/day.ts';
import {
  spellingsOf, unitOf, type Dimension, type Duration, type Quantity, type Strength, type Temperature, type TemperatureUnit,
} from '../model/quantity.ts';
import type { DaySpan, Placed, Span, WrittenDate, WrittenTime } from '../model/record.ts';
import type { Amount, Atom, Piece } from './grammar.ts';
import { listed, nearest } from './nearest.ts';
import { replacement, type LineReader } from './reader.ts';
import { CommaNumber } from './tokens.ts';

/** Above this no count of seeds and no quantity of a bench is meant. */
const LARGEST = 1e9;

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const pad = (n: number) => String(n).padStart(2, '0');

export function readDate(reader: LineReader, piece: Atom): WrittenDate | undefined {
  const parts = /^(\d+)([-/.])(\d+)[-/.](\d+)$/.exec(piece.text);
  const [a, b, c] = parts ? [parts[1] as string, parts[3] as string, parts[4] as string] : ['', '', ''];
  if (a.length === 4 && b.length <= 2 && c.length <= 2) {
    const [year, month, date] = [Number(a), Number(b), Number(c)];
    const iso = `${a}-${pad(month)}-${pad(date)}`;
    const day = dayOf(year, month, date);
    if (day === undefined) return impossible(reader, piece, year, month, date);
    if (piece.text === iso) return { start: piece.start, end: piece.end, day };
    return reader.report('bad-date', piece, { written: piece.text }, [replacement(piece, iso)]);
  }
  if (a.length <= 2 && b.length <= 2 && (c.length === 4 || c.length === 2)) {
    const year = Number(c) + (c.length === 2 ? 2000 : 0);
    const readings = [...new Set([dayOf(year, Number(b), Number(a)), dayOf(year, Number(a), Number(b))])]
      .filter(day => day !== undefined).map(isoOf);
    if (readings.length > 0) {
      return reader.report('day-first-date', piece, { written: piece.text, readings: listed(readings, 'or') },
        readings.map(iso => replacement(piece, iso)));
    }
  }
  return reader.report('bad-date', piece, { written: piece.text });
}

function impossible(reader: LineReader, span: Span, year: number, month: number, date: number): undefined {
  const name = months[month - 1];
  let last = 28;
  while (name && dayOf(year, month, last + 1) !== undefined) last++;
  const suggestion = name && date > last ? `${name} ${year} has ${last} days.` : 'Months go from 01 to 12 and days from 01.';
  const fixes = name && date > last ? [replacement(span, `${year}-${pad(month)}-${last}`)] : [];
  return reader.report('impossible-date', span, { written: reader.slice(span), suggestion }, fixes);
}

/** A date, a month or a year, as `collected` takes it. */
export function readDaySpan(reader: LineReader, piece: Piece): Placed<DaySpan> | undefined {
  const { start, end } = piece;
  if (piece.kind === 'date') {
    const date = readDate(reader, piece);
    return date && { start, end, value: { first: date.day, last: date.day } };
  }
  const match = /^(\d{4})(?:-(\d{1,2}))?$/.exec(reader.slice(piece));
  if (!match) return reader.report('bad-date', piece, { written: reader.slice(piece) });
  const year = Number(match[1]);
  const month = match[2] === undefined ? undefined : Number(match[2]);
  const first = dayOf(year, month ?? 1, 1);
  const next = month === undefined || month === 12 ? dayOf(year + 1, 1, 1) : dayOf(year, month + 1, 1);
  if (first === undefined || next === undefined) {
    return reader.report('impossible-date', piece, { written: reader.slice(piece), suggestion: 'Months go from 01 to 12.' });
  }
  if (match[2]?.length === 1) {
    return reader.report('bad-date', piece, { written: reader.slice(piece) }, [replacement(piece, `${match[1]}-0${match[2]}`)]);
  }
  return { start, end, value: { first, last: next - 1 } };
}

export function readTime(reader: LineReader, piece: Atom): WrittenTime | undefined {
  const [hours, minutes] = piece.text.split(':').map(Number) as [number, number];
  if (hours > 23 || minutes > 59) return reader.report('bad-time', piece, { written: piece.text });
  return { start: piece.start, end: piece.end, minutes: hours * 60 + minutes };
}

function tokenSpan(token: IToken): Span {
  return { start: token.startOffset, end: token.startOffset + token.image.length };
}

/** A decimal number; a comma in it is a problem with both readings as fixes, never guessed. */
export function readNumber(reader: LineReader, token: IToken): number | undefined {
  const span = tokenSpan(token);
  if (token.tokenType === CommaNumber) {
    const whole = token.image.replaceAll(',', '');
    const grouped = /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(token.image);
    const points = (/^\d+,\d+$/.test(token.image) ? [token.image.replace(',', '.')] : []).concat(grouped ? [whole] : []);
    return reader.report('decimal-comma', span, { written: token.image, point: listed(points, 'or') || 'as in 0.5' },
      points.map(text => replacement(span, text)));
  }
  const value = Number(token.image);
  if (Math.abs(value) > LARGEST) {
    return reader.report('bad-number', span, { written: token.image, expected: 'a number that can be meant here', suggestion: 'Write a smaller one.' });
  }
  return value;
}

/** How many: a whole number from 0. */
export function readWhole(reader: LineReader, { number, second, start, end }: Amount): Placed<number> | undefined {
  const value = readNumber(reader, number);
  if (value === undefined) return undefined;
  if (second || !Number.isInteger(value) || value < 0) {
    const written = reader.slice(second ? { start, end } : tokenSpan(number));
    return reader.report('bad-number', second ? { start, end } : tokenSpan(number),
      { written, expected: 'a whole number', suggestion: 'Seeds and seedlings are counted: 0, 1, 2, ...' });
  }
  return { value, ...tokenSpan(number) };
}

/** The dimension of an amount's unit; undefined when it has no unit or one that is not known. */
export function dimensionOf({ unit }: Amount): Dimension | undefined {
  return unit && unitOf(unit.image)?.dimension;
}

/** A quantity of a dimension, not negative. `of` says what of, for the message: 'of time'. */
export function readQuantity<Unit extends string>(
  reader: LineReader, amount: Amount, dimension: Dimension, of: string,
): (Quantity<Unit> & Span) | undefined {
  const value = readNumber(reader, amount.number);
  const found = amount.unit && unitOf(amount.unit.image);
  if (!amount.unit || found?.dimension !== dimension) return badUnit(reader, amount, dimension, of);
  if (value === undefined) return undefined;
  if (value < 0 || amount.second || amount.equals) {
    return reader.report('bad-number', amount, {
      written: reader.slice(amount), expected: `a quantity ${of}`, suggestion: `Write one number from 0 up and its unit.`,
    });
  }
  return { value, unit: found.unit as Unit, start: amount.start, end: amount.end };
}

function badUnit(reader: LineReader, { unit, start, end }: Amount, dimension: Dimension, of: string): undefined {
  const spellings = spellingsOf(dimension);
  const common = [...new Set(spellings.map(s => unitOf(s)?.unit ?? s))];
  if (!unit) {
    return reader.report('missing-unit', { start, end }, { written: reader.slice({ start, end }), suggestion: `Write ${listed(common, 'or')} behind it.` });
  }
  const span = tokenSpan(unit);
  const near = nearest(unit.image, spellings);
  const suggestion = near ? `Did you mean “${near}”?` : `Write ${listed(common, 'or')}.`;
  return reader.report('bad-unit', span, { unit: unit.image, of, suggestion }, near ? [replacement(span, near)] : []);
}

export function readStrength(reader: LineReader, amount: Amount): (Strength & Span) | undefined {
  return readQuantity(reader, amount, 'strength', 'of strength');
}

/** A duration; months and years must come to whole calendar months. */
export function readDuration(reader: LineReader, amount: Amount): (Duration & Span) | undefined {
  const duration = readQuantity<Duration['unit']>(reader, amount, 'duration', 'of time');
  if (!duration) return undefined;
  const inMonths = duration.unit === 'months' ? duration.value : duration.unit === 'years' ? duration.value * 12 : 0;
  if (!Number.isInteger(inMonths)) {
    return reader.report('bad-number', amount, {
      written: reader.slice(amount), expected: 'a whole number of months', suggestion: 'Write days or weeks.',
    });
  }
  return duration;
}

/** A temperature or a pair of day and night. */
export function readTemperature(reader: LineReader, amount: Amount): Placed<Temperature> | undefined {
  const found = amount.unit && unitOf(amount.unit.image);
  if (found?.dimension !== 'temperature') return badUnit(reader, amount, 'temperature', 'of temperature');
  const day = readNumber(reader, amount.number);
  const night = amount.second && readNumber(reader, amount.second);
  if (day === undefined || (amount.second && night === undefined)) return undefined;
  return { start: amount.start, end: amount.end, value: { day, night, unit: found.unit as TemperatureUnit } };
}
