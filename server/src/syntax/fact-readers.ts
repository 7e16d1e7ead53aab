/** One reader for each type of fact: pieces in; the fact, and how many pieces it took, out. */
import { countables, cutClasses, dormancies, type Fact, type FactType, type SubstanceFact, type Written } from '../model/record.ts';
import type { Placed } from '../model/record.ts';
import type { Mass, Volume } from '../model/quantity.ts';
import type { Amount, Piece } from './grammar.ts';
import { listed, nearest } from './nearest.ts';
import { replacement, spanOf, type LineReader } from './reader.ts';
import {
  dimensionOf, readDate, readDaySpan, readDuration, readNumber, readQuantity, readStrength, readTemperature, readTime, readWhole,
} from './values.ts';

interface Reading {
  readonly fact: Fact | undefined;
  readonly used: number;
}

type FactReader = (reader: LineReader, pieces: Piece[]) => Reading;

const nothing = (used: number): Reading => ({ fact: undefined, used });

/** The amount at a place in the row; a problem when something else or nothing stands there. */
function amountAt(reader: LineReader, pieces: Piece[], index: number, expected: string): Amount | undefined {
  const piece = pieces[index];
  if (piece?.kind === 'amount') return piece;
  const [first] = pieces as [Piece];
  const found = spanOf(piece ? [piece] : pieces);
  return reader.report('bad-value', found, {
    fact: `“${reader.slice(first)}”`, expected, written: piece ? reader.slice(piece) : 'nothing', example: `${reader.slice(first)} ${expected}`,
  });
}

function counted(type: 'seeds' | 'seedlings' | 'drops'): FactReader {
  return (reader, pieces) => {
    const amount = pieces[0] as Amount;
    const n = readWhole(reader, amount);
    return { fact: n && { type, n, start: amount.start, end: amount.end }, used: 1 };
  };
}

/** A text behind a word: all that is left of the fact. */
function texted(type: 'from' | 'at' | 'stored' | 'in' | 'source' | 'dormancy' | 'regime' | 'for', expected: string): FactReader {
  return (reader, pieces) => {
    const value = reader.written(pieces.slice(1));
    if (!value?.text) {
      reader.report('bad-value', spanOf(pieces), { fact: `“${type}”`, expected, written: 'nothing', example: `${type} ${expected}` });
      return nothing(pieces.length);
    }
    return { fact: { type, value, ...spanOf(pieces) }, used: pieces.length };
  };
}

function bare(type: 'text' | 'path'): FactReader {
  return (reader, pieces) => {
    const value = reader.written(pieces);
    return { fact: value && { type, value, ...spanOf(pieces) }, used: pieces.length };
  };
}

const readDormancy: FactReader = (reader, pieces) => {
  const piece = pieces[1];
  const value: Written | undefined = piece && { text: reader.slice(piece), start: piece.start, end: piece.end };
  const known = value && dormancies.find(d => d === value.text.toUpperCase());
  if (value && known) return { fact: { type: 'dormancy', value: { ...value, text: known }, ...spanOf(pieces.slice(0, 2)) }, used: 2 };
  const near = value && nearest(value.text, dormancies);
  reader.report('bad-value', value ?? spanOf(pieces), {
    fact: '“dormancy”', expected: listed(dormancies, 'or'), written: value?.text ?? 'nothing', example: 'dormancy PD',
  }, near && value ? [replacement(value, near)] : []);
  return nothing(pieces.length);
};

const readPart: FactReader = (reader, pieces) => {
  const first = pieces[0] as Piece;
  const name: Written = { text: reader.slice(first), start: first.start, end: first.end };
  if (!/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(name.text)) {
    reader.report('bad-id', name, { id: name.text, what: 'the name of a batch', batch: '' });
    return nothing(pieces.length);
  }
  const amount = pieces[1];
  if (amount?.kind !== 'amount' || !/^seeds?$/i.test(amount.unit?.image ?? 'seeds')) {
    const written = reader.slice(spanOf(pieces.slice(1))) || 'nothing';
    reader.report('bad-value', spanOf(pieces), { fact: `“${name.text}”`, expected: 'a number of seeds', written, example: `${name.text} 24 seeds` });
    return nothing(pieces.length);
  }
  const n = readWhole(reader, amount);
  return { fact: n && { type: 'part', name, n, ...spanOf(pieces.slice(0, 2)) }, used: 2 };
};

const readSubstance: FactReader = (reader, pieces) => {
  const first = pieces[0] as Piece;
  const found: { -readonly [Key in keyof SubstanceFact]?: SubstanceFact[Key] } = {};
  let used = 1;
  for (; used < pieces.length; used++) {
    const piece = pieces[used] as Piece;
    const word = piece.kind === 'word' ? piece.text.toLowerCase() : '';
    if (word === 'unmeasured' && !found.unmeasured) {
      found.unmeasured = { start: piece.start, end: piece.end };
    } else if (word === 'halved' && !found.halved) {
      const times = amountAt(reader, pieces, ++used, '3 times');
      const n = times && readWhole(reader, times);
      if (!n) return nothing(pieces.length);
      found.halved = n;
    } else if (word === 'w/v' && found.strength) {
      // 0.05 % w/v: what % means here anyway.
    } else if (piece.kind === 'amount') {
      const dimension = dimensionOf(piece);
      if (dimension === 'volume' && !found.volume) found.volume = placed(readQuantity<Volume['unit']>(reader, piece, 'volume', 'of volume'));
      else if (dimension === 'mass' && !found.mass) found.mass = placed(readQuantity<Mass['unit']>(reader, piece, 'mass', 'of mass'));
      else if (!found.strength && !found.volume && !found.mass) found.strength = placed(readStrength(reader, piece));
      else break;
    } else break;
  }
  const name: Written = { text: reader.slice(first), start: first.start, end: first.end };
  return { fact: { type: 'substance', name, ...found, ...spanOf(pieces.slice(0, used)) }, used };
};

function placed<Unit>(quantity: ({ value: number; unit: Unit } & { start: number; end: number }) | undefined):
  Placed<{ value: number; unit: Unit }> | undefined {
  return quantity && { value: { value: quantity.value, unit: quantity.unit }, start: quantity.start, end: quantity.end };
}

const readCount: FactReader = (reader, pieces) => {
  const amount = pieces[0] as Amount;
  const n = readWhole(reader, amount);
  const what = countables.find(c => c === (amount.unit?.image.toLowerCase() ?? 'germinated'));
  return { fact: n && what && { type: 'count', what, n, total: amount.equals, start: amount.start, end: amount.end }, used: 1 };
};

const readCut: FactReader = (reader, pieces) => {
  const amount = pieces[0] as Amount;
  const n = readWhole(reader, amount);
  const what = cutClasses.find(c => c === amount.unit?.image.toLowerCase());
  return { fact: n && what && { type: 'cut', what, n, start: amount.start, end: amount.end }, used: 1 };
};

const readUntil: FactReader = (reader, pieces) => {
  const [, date, time] = pieces;
  if (date?.kind !== 'date') {
    reader.report('bad-value', spanOf(date ? [date] : pieces), {
      fact: '“until”', expected: 'a date', written: date ? reader.slice(date) : 'nothing', example: 'until 2026-01-11 19:00',
    });
    return nothing(pieces.length);
  }
  const day = readDate(reader, date);
  const minutes = time?.kind === 'time' ? readTime(reader, time) : undefined;
  const used = time?.kind === 'time' ? 3 : 2;
  return { fact: day && { type: 'until', date: day, ...(minutes && { time: minutes }), ...spanOf(pieces.slice(0, used)) }, used };
};

/** A quantity that is a fact by itself (`24 h`) or behind its word (`keeps 4 years`). */
function quantified(type: 'duration' | 'keeps' | 'volume' | 'to' | 'strength' | 'solubility' | 'molarMass', expected: string): FactReader {
  return (reader, pieces) => {
    const index = pieces[0]?.kind === 'amount' ? 0 : 1;
    const amount = amountAt(reader, pieces, index, expected);
    if (!amount) return nothing(pieces.length);
    const span = spanOf(pieces.slice(0, index + 1));
    return { fact: quantity(reader, amount, type, span), used: index + 1 };
  };
}

function quantity(reader: LineReader, amount: Amount, type: FactType, span: { start: number; end: number }): Fact | undefined {
  switch (type) {
    case 'duration': case 'keeps': {
      const value = readDuration(reader, amount);
      return value && { type, value: { value: value.value, unit: value.unit }, ...span };
    }
    case 'volume': case 'to': {
      const value = readQuantity<Volume['unit']>(reader, amount, 'volume', 'of volume');
      return value && { type, value: { value: value.value, unit: value.unit }, ...span };
    }
    case 'strength': case 'solubility': {
      const value = readStrength(reader, amount);
      return value && { type, value: { value: value.value, unit: value.unit }, ...span };
    }
    default: {
      const value = readQuantity<'g/mol'>(reader, amount, 'molarMass', 'of molar mass');
      return value && { type: 'molarMass', value: { value: value.value, unit: value.unit }, ...span };
    }
  }
}

const readPurity: FactReader = (reader, pieces) => {
  const amount = amountAt(reader, pieces, 1, '90 %');
  const percent = amount && readNumber(reader, amount.number);
  if (!amount || percent === undefined) return nothing(pieces.length);
  if (amount.unit?.image !== '%' || percent <= 0 || percent > 100) {
    reader.report('bad-value', amount, { fact: '“purity”', expected: 'a percentage above 0 and up to 100', written: reader.slice(amount), example: 'purity 90 %' });
    return nothing(pieces.length);
  }
  return { fact: { type: 'purity', percent, ...spanOf(pieces.slice(0, 2)) }, used: 2 };
};

const readDraw: FactReader = (reader, pieces) => {
  const name = pieces[1];
  if (name?.kind !== 'word') {
    reader.report('bad-value', spanOf(name ? [name] : pieces), {
      fact: '“from”', expected: 'the stock and the volume taken', written: name ? reader.slice(name) : 'nothing', example: 'from G1 10 mL',
    });
    return nothing(pieces.length);
  }
  const amount = amountAt(reader, pieces, 2, '10 mL');
  const volume = amount && placed(readQuantity<Volume['unit']>(reader, amount, 'volume', 'of volume'));
  const stock: Written = { text: name.text, start: name.start, end: name.end };
  return { fact: volume && { type: 'draw', stock, volume, ...spanOf(pieces.slice(0, 3)) }, used: 3 };
};

const readStage: FactReader = (reader, pieces) => {
  const stage = reader.slice(pieces[0] as Piece).toLowerCase() as 'warm' | 'chill';
  let temperature, duration;
  let used = 1;
  for (; used < pieces.length; used++) {
    const piece = pieces[used] as Piece;
    if (piece.kind !== 'amount') break;
    if (dimensionOf(piece) === 'temperature' && !temperature) temperature = readTemperature(reader, piece);
    else if (!duration) duration = readDuration(reader, piece);
    else break;
  }
  const fact: Fact = {
    type: 'stage', stage, ...spanOf(pieces.slice(0, used)),
    ...(temperature && { temperature }),
    ...(duration && { duration: { value: { value: duration.value, unit: duration.unit }, start: duration.start, end: duration.end } }),
  };
  return { fact, used };
};

export const readers: Readonly<Record<FactType, FactReader>> = {
  seeds: counted('seeds'), seedlings: counted('seedlings'), drops: counted('drops'),
  part: readPart, substance: readSubstance, count: readCount, cut: readCut, until: readUntil,
  collected: (reader, pieces) => {
    const piece = pieces[1];
    if (!piece) {
      reader.report('bad-value', spanOf(pieces), { fact: '“collected”', expected: 'a date, a month or a year', written: 'nothing', example: 'collected 2025-09-14' });
      return nothing(1);
    }
    const when = readDaySpan(reader, piece);
    return { fact: when && { type: 'collected', when, ...spanOf(pieces.slice(0, 2)) }, used: 2 };
  },
  dormancy: readDormancy,
  from: texted('from', 'a source'), at: texted('at', 'a place'), stored: texted('stored', 'how it is kept'),
  in: texted('in', 'a medium'), source: texted('source', 'a reference'), regime: texted('regime', 'its name'), for: texted('for', 'a genus'),
  text: bare('text'), path: bare('path'),
  duration: quantified('duration', '24 h'), keeps: quantified('keeps', '4 years'), volume: quantified('volume', '20 mL'),
  to: quantified('to', '20 mL'), strength: quantified('strength', '1000 ppm'), solubility: quantified('solubility', '5 g/L'),
  molarMass: quantified('molarMass', '76.117 g/mol'),
  purity: readPurity, draw: readDraw, stage: readStage,
  temperature: (reader, pieces) => {
    const value = readTemperature(reader, pieces[0] as Amount);
    return { fact: value && { type: 'temperature', ...value }, used: 1 };
  },
};
