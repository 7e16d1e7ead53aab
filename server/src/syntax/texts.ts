/** Facts that are a word or a text. */
import { dormancies, type Fact, type Span } from '../model/record.ts';
import type { FactReader } from './fact-readers.ts';
import type { Piece } from './grammar.ts';
import { listed, nearest } from './nearest.ts';
import { readHowMany } from './how-many.ts';
import { dimensionOf } from './quantities.ts';
import { replacement, spanFrom, type LineReader } from './reader.ts';
import { isBatchName, isShaped, runEnd } from './subject.ts';
import { reportValue } from './wanted.ts';

/** A text behind a word: all that is left of the fact. */
export function worded(type: 'from' | 'at' | 'stored' | 'in' | 'source' | 'for' | 'whither', expected: string, example: string): FactReader {
  return (reader, pieces) => {
    const value = reader.written(pieces, 1);
    if (type === 'at' && pieces.length === 2 && isMeasured(pieces[1]!)) {
      reportValue(reader, pieces, 1, expected, example, pieces[1], [
        { title: 'Take out “at”', start: pieces[0]!.start, end: pieces[1]!.start, text: '' },
      ]);
      return undefined;
    }
    if (value?.text) return { type, value, start: pieces[0]!.start, end: pieces[pieces.length - 1]!.end };
    reportValue(reader, pieces, 1, expected, example);
    return undefined;
  };
}

/** `at 18 C` and `at 500 ppm` are no places. */
function isMeasured(piece: Piece): boolean {
  const dimension = piece.kind === 'amount' ? dimensionOf(piece) : undefined;
  return dimension === 'temperature' || dimension === 'strength';
}

/** A text without a word before it: the whole fact. */
export function readBare(type: 'text' | 'path'): FactReader {
  return (reader, pieces) => {
    const value = reader.written(pieces, 0)!;
    return { type, value, ...spanFrom(pieces, 0) };
  };
}

/** The name of a regime. */
export function readRegime(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const [word, name] = pieces;
  if (name?.kind === 'word') {
    return { type: 'regime', value: { text: name.text, start: name.start, end: name.end }, start: word!.start, end: name.end };
  }
  reportValue(reader, pieces, 1, 'the name of a regime', 'regime twowinters');
  return undefined;
}

/** The older lot that a new one takes the place of. */
export function readReplaced(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const [word, name] = pieces;
  const span = { start: name?.start ?? word!.end, end: runEnd(reader.line, name?.start ?? word!.end) };
  const text = reader.slice(span);
  if (name && isShaped('new lot', text)) return { type: 'replaces', value: { text, ...span }, start: word!.start, end: span.end };
  // A batch has no packet of its own.
  const lot = isShaped('batch', text) ? [replacement(span, text.slice(0, text.indexOf('/')))] : [];
  reportValue(reader, pieces, 1, 'the id of an older lot', 'replaces VER-22', name && span, lot);
  return undefined;
}

export function readDormancy(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const span = spanFrom(pieces, 1);
  const written = pieces.length > 1 ? reader.slice(span) : '';
  const value = dormancies.find(dormancy => dormancy === written.toUpperCase());
  if (value) return { type: 'dormancy', value: { text: value, ...span }, start: pieces[0]!.start, end: span.end };
  const near = nearest(written.replaceAll(/\s/g, ''), dormancies);
  const expected = listed(dormancies, 'or');
  if (written === '') reportValue(reader, pieces, 1, expected, 'dormancy PD');
  else {
    reader.report('bad-value', span, {
      fact: '“dormancy”', expected, instead: `, not “${reader.shown(span)}”`, example: 'dormancy PD',
    }, near ? [replacement(span, near)] : []);
  }
  return undefined;
}

/** A batch split off and its seeds: `A 24 seeds`, `1 half`. */
export function readPart(reader: LineReader, written: readonly Piece[]): Fact | undefined {
  const pieces = withName(written);
  const first = pieces[0]!;
  const { start } = first;
  const end = runEnd(reader.line, first.end);
  const name = { text: reader.line.slice(start, end), start, end };
  const amount = pieces[1];
  if (first.kind === 'amount' && first.unit && /^seeds?$/i.test(first.unit.image)) {
    const swap = amount && pieces.length === 2 ? [replacement(spanFrom(pieces, 0), `${reader.slice(amount)} ${name.text}`)] : [];
    reader.report('bad-value', first, {
      fact: `“${reader.shown(first)}”`, expected: 'the name of the new batch before it', instead: '', example: `A ${reader.shown(first)}`,
    }, swap);
    return undefined;
  }
  if (!isBatchName(name.text)) {
    const { part, instead } = meantPart(reader, pieces) ?? {};
    reader.report('bad-id', name, {
      id: reader.shown(name), what: 'the name of a batch', suggestion: part ? `Did you mean “${part}”?` : 'Begin it with a letter or a digit, and go on with letters, digits, “-”, “.” and “_”.',
    }, part && instead ? [replacement(instead, part)] : []);
    return undefined;
  }
  if (amount?.kind === 'word' && amount.text.toLowerCase() === 'half') {
    const estimate = { value: { kind: 'half' as const }, start: amount.start, end: amount.end };
    return { type: 'part', name, estimate, start, end: amount.end };
  }
  const isAbout = amount?.kind === 'word' && amount.text.toLowerCase() === 'about';
  if (isAbout || (amount?.kind === 'amount' && /^(?:seeds?|to)$/i.test(amount.unit?.image ?? 'seeds'))) {
    const read = readHowMany(reader, pieces, 1);
    return read && { type: 'part', name, ...read, start };
  }
  reportValue(reader, pieces, 1, 'a number of seeds', `${reader.shown(first)} 24 seeds`);
  return undefined;
}

/** `1 half`, `2 about 24 seeds`: the grammar takes the word behind the number of a name for its unit. */
function withName(pieces: readonly Piece[]): readonly Piece[] {
  const [first, ...others] = pieces;
  if (first?.kind !== 'amount' || !first.unit || !/^(?:about|half)$/i.test(first.unit.image)) return pieces;
  const [{ start, number, end }, text] = [first, first.unit.image];
  const word: Piece = { kind: 'word', text, start: end - text.length, end };
  const name: Piece = { kind: 'amount', number, unit: undefined, start, end: start + number.image.length };
  return name.end < word.start ? [name, word, ...others] : pieces;
}

/** `A=24`, `A: 24 seeds`, `VER-24/A 24 seeds`. */
function meantPart(reader: LineReader, pieces: readonly Piece[]): { part: string; instead: Span } | undefined {
  const whole = spanFrom(pieces, 0);
  const parts = /^(?:[\w.-]+\/)?([A-Za-z0-9][\w.-]*)(?:[=:] *| +)(\d+)(?: seeds?)?$/.exec(reader.slice(whole).slice(0, 80));
  return parts ? { part: `${parts[1]!} ${parts[2]!} seeds`, instead: whole } : undefined;
}
