/**
 * One reader for each type of fact: pieces in, the fact out. Its span tells how many of the pieces it took. A reader
 * that gives no fact has reported why.
 */
import type { Keyword } from '../model/keywords.ts';
import { countables, cutClasses, purityForms, type Fact, type FactType } from '../model/record.ts';
import { readDate, readDaySpan, readTime } from './dates.ts';
import type { Amount, Piece } from './grammar.ts';
import { readSeeds } from './how-many.ts';
import { numeralOf, isTotal, readNumber, readWhole } from './numbers.ts';
import { readDuration, readQuantity, readStrength, readTemperature, readVolume } from './quantities.ts';
import { replacement, shown, spanFrom, type LineReader } from './reader.ts';
import { readPowderDraw, readStage, readSubstance } from './substance.ts';
import { readBare, readDormancy, readPart, readRegime, readReplaced, worded } from './texts.ts';
import { amountAt, reportValue } from './wanted.ts';

export type FactReader = (reader: LineReader, pieces: readonly Piece[], keyword: Keyword) => Fact | undefined;

function counted(type: 'seedlings' | 'drops'): FactReader {
  return (reader, [amount]) => {
    const n = readWhole(reader, amount as Amount);
    return n && { type, n, start: amount!.start, end: amount!.end };
  };
}

function readCount(reader: LineReader, [first]: readonly Piece[]): Fact | undefined {
  const amount = first as Amount;
  const n = readWhole(reader, amount, numeralOf(amount));
  const word = amount.unit?.image.toLowerCase() ?? 'germinated';
  const what = countables.find(countable => countable === word)!;
  return n && { type: 'count', what, n, total: isTotal(amount), start: amount.start, end: amount.end };
}

function readCut(reader: LineReader, [first]: readonly Piece[]): Fact | undefined {
  const amount = first as Amount;
  const n = readWhole(reader, amount);
  const word = amount.unit?.image.toLowerCase();
  const what = cutClasses.find(cutClass => cutClass === word)!;
  return n && { type: 'cut', what, n, start: amount.start, end: amount.end };
}

function readUntil(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const [word, second, third] = pieces;
  if (second?.kind !== 'date') {
    reportValue(reader, pieces, 1, 'a date', 'until 2026-01-11 19:00');
    return undefined;
  }
  const { start } = word!;
  const date = readDate(reader, second);
  if (third?.kind !== 'time') return date && { type: 'until', date, start, end: second.end };
  const time = readTime(reader, third);
  return date && time && { type: 'until', date, time, start, end: third.end };
}

function readJudgeDay(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const [word, second, third] = pieces;
  const { start } = word!;
  if (second?.kind === 'word' && second.text.toLowerCase() === 'day' && third?.kind === 'amount' && !third.unit) {
    const age = readWhole(reader, third);
    return age && { type: 'on', age, start, end: third.end };
  }
  if (second?.kind !== 'date') {
    reportValue(reader, pieces, 1, 'a date, or a day counted from day 0', 'on day 120');
    return undefined;
  }
  const date = readDate(reader, second, 'day');
  return date && { type: 'on', date, start, end: second.end };
}

/** `look again 2027-03-01`; `again` may be left out. */
function readLook(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const second = pieces[1];
  const at = second?.kind === 'word' && second.text.toLowerCase() === 'again' ? 2 : 1;
  const piece = pieces[at];
  if (piece?.kind !== 'date') {
    reportValue(reader, pieces, at, 'a date', 'look again 2027-03-01');
    return undefined;
  }
  const date = readDate(reader, piece);
  return date && { type: 'look', date, start: pieces[0]!.start, end: piece.end };
}

const twoDates = /^([\d-]+)(\s+and\s+)[\d-]+$/i;

/** `collected 2024-09 and 2025-10`. */
function readTwoHarvests(reader: LineReader, pieces: readonly Piece[], first: string, gap: string): Fact | undefined {
  const whole = spanFrom(pieces, 1);
  const one = readDaySpan(reader, { start: whole.start, end: whole.start + first.length });
  const other = one && readDaySpan(reader, { start: whole.start + first.length + gap.length, end: whole.end });
  if (!one || !other) return undefined;
  const harvests = [one.value, other.value];
  const when = {
    value: { first: Math.min(...harvests.map(each => each.first)), last: Math.max(...harvests.map(each => each.last)) },
    ...whole,
  };
  return { type: 'collected', when, harvests, start: pieces[0]!.start, end: whole.end };
}

function dated(type: 'collected' | 'bought', example: string): FactReader {
  return (reader, pieces) => {
    if (pieces.length === 1) {
      reportValue(reader, pieces, 1, 'a date, a month or a year', example);
      return undefined;
    }
    const two = type === 'collected' ? twoDates.exec(reader.slice(spanFrom(pieces, 1))) : undefined;
    if (two) return readTwoHarvests(reader, pieces, two[1]!, two[2]!);
    const { end } = pieces[1]!;
    // What belongs to no date may belong to one written in words: Sept 2025.
    const when = readDaySpan(reader, /^[\d-]+$/.test(reader.slice(pieces[1]!)) ? pieces[1]! : spanFrom(pieces, 1));
    return when && { type, when, start: pieces[0]!.start, end };
  };
}

function readPurity(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const amount = amountAt(reader, pieces, 1, 'a percentage', 'purity 90 %');
  const percent = amount && readNumber(reader, amount);
  if (!amount || percent === undefined) return undefined;
  if (amount.unit?.image === '%' && percent > 0 && percent <= 100) {
    const { start } = pieces[0]!;
    const of = pieces[2];
    const form = of?.kind === 'word' ? purityForms.find(each => each === of.text.toLowerCase()) : undefined;
    return { type: 'purity', percent, ...(form && { form }), start, end: form ? of!.end : amount.end };
  }
  reportValue(reader, pieces, 1, 'a percentage above 0 and up to 100', 'purity 90 %', amount);
  return undefined;
}

function readDraw(reader: LineReader, pieces: readonly Piece[], keyword: Keyword): Fact | undefined {
  const [word, name] = pieces;
  if (name?.kind !== 'word') {
    if (keyword === 'stock') {
      reportValue(reader, pieces, 1, 'the packet and the mass taken from it', 'from P1 20 mg');
      return undefined;
    }
    const turned = pieces[2]?.kind === 'word' ? spanFrom(pieces, 1) : undefined;
    reportValue(reader, pieces, 1, 'a stock and the volume taken from it', 'from G1 10 mL', turned,
      turned && name ? [replacement(turned, `${reader.slice(pieces[2]!)} ${reader.slice(name)}`)] : []);
    return undefined;
  }
  const stock = { text: name.text, start: name.start, end: name.end };
  if (keyword === 'stock') return readPowderDraw(reader, pieces, stock);
  const amount = amountAt(reader, pieces, 2, 'the volume taken', `from ${shown(name.text)} 10 mL`);
  const volume = amount && readVolume(reader, amount);
  return volume && { type: 'draw', stock, volume, start: word!.start, end: volume.end };
}

/** A quantity that is a fact by itself (`24 h`) or behind its word (`keeps 4 years`). */
function quantified(
  type: 'duration' | 'keeps' | 'volume' | 'mass' | 'to' | 'temperature' | 'strength' | 'solubility' | 'molarMass',
  read: (reader: LineReader, amount: Amount, keyword: Keyword) => { readonly value: unknown } | undefined,
  expected = '', example = '',
): FactReader {
  return (reader, pieces, keyword) => {
    const first = pieces[0]!;
    const amount = first.kind === 'amount' ? first : amountAt(reader, pieces, 1, expected, example);
    const quantity = amount && read(reader, amount, keyword);
    return quantity && ({ type, value: quantity.value, start: first.start, end: amount.end } as Fact);
  };
}

export const readers: Readonly<Record<FactType, FactReader>> = {
  seeds: readSeeds, seedlings: counted('seedlings'), drops: counted('drops'),
  part: readPart, substance: readSubstance, stage: readStage, count: readCount, cut: readCut,
  collected: dated('collected', 'collected 2025-09-14'), bought: dated('bought', 'bought 2025-03'),
  until: readUntil, on: readJudgeDay, purity: readPurity, draw: readDraw, dormancy: readDormancy,
  from: worded('from', 'a source', 'from own garden'), at: worded('at', 'a place', 'at bag 3 slot 2'),
  stored: worded('stored', 'how it is kept', 'stored dry'), in: worded('in', 'a medium', 'in seed compost'),
  source: worded('source', 'a reference', 'source "a book, p. 12"'), for: worded('for', 'a genus', 'for Primula'),
  outdoors: (_, [word]) => ({ type: 'outdoors', start: word!.start, end: word!.end }), look: readLook,
  whither: worded('whither', 'where it went', 'to a friend'), regime: readRegime, replaces: readReplaced, text: readBare('text'), path: readBare('path'),
  duration: quantified('duration', readDuration), keeps: quantified('keeps', readDuration, 'a duration', 'keeps 4 years'),
  volume: quantified('volume', (reader, amount, keyword) => readVolume(reader, amount, keyword === 'left')),
  mass: quantified('mass', (reader, amount) => readQuantity(reader, amount, 'mass', true)), to: quantified('to', (reader, amount) => readVolume(reader, amount), 'a volume', 'to 20 mL'),
  temperature: quantified('temperature', readTemperature),
  strength: quantified('strength', readStrength),
  solubility: quantified('solubility', readStrength, 'a strength', 'solubility 5 g/L'),
  molarMass: quantified('molarMass', (reader, amount) => readQuantity(reader, amount, 'molarMass')),
};
