/**
 * Facts by their shape. A fact is known by its first word (`from`, `at`, `until`), by the unit of its number (`24 h`,
 * `3 rotted`), or as a name with an amount (`GA3 500 ppm`, `A 24 seeds`); so nobody has to remember an order.
 */
import { keywords, type FactUse, type Keyword } from '../model/keywords.ts';
import { spellingsOf, unitOf } from '../model/quantity.ts';
import { countables, cutClasses, type Countable, type CutClass, type Fact, type FactType } from '../model/record.ts';
import type { Amount, Piece } from './grammar.ts';
import { readers } from './fact-readers.ts';
import { listed, nearest } from './nearest.ts';
import { replacement, spanOf, type LineReader } from './reader.ts';
import { dimensionOf } from './values.ts';

/** The words that begin a fact of a type. */
export const leadWords: Partial<Record<FactType, readonly string[]>> = {
  collected: ['collected'], from: ['from'], at: ['at'], stored: ['stored'], in: ['in'], source: ['source'],
  dormancy: ['dormancy'], until: ['until'], regime: ['regime'], purity: ['purity'], keeps: ['keeps'], to: ['to'],
  for: ['for'], draw: ['from'], stage: ['warm', 'chill'], solubility: ['solubility'],
};

const unitWords: Partial<Record<FactType, readonly string[]>> = {
  seeds: ['seeds', 'seed'], seedlings: ['seedlings', 'seedling'], drops: ['drops', 'drop'],
  count: countables, cut: cutClasses,
};

/** Reads the fact that stands between two commas. Whatever cannot be read is reported; undefined then. */
export function readFact(reader: LineReader, keyword: Keyword, comma: number, pieces: Piece[]): Fact | undefined {
  const first = pieces[0];
  if (!first) return reader.report('empty-fact', { start: comma, end: comma + 1 }, {}, [{ title: 'Take out the comma', start: comma, end: comma + 1, text: '' }]);
  const type = typeOf(reader, keyword, first);
  if (!type) return undefined;
  const before = reader.problems.length;
  const { fact, used } = readers[type](reader, pieces);
  const rest = pieces.slice(used);
  // One problem a fact: what follows a piece that could not be read may belong to it.
  if (reader.problems.length > before) return undefined;
  if (rest.length > 0) {
    const span = spanOf(rest);
    reader.report('stray-text', span, { text: reader.slice(span), suggestion: 'A fact of its own stands behind a comma.' },
      [{ title: 'Put a comma before it', start: pieces[used - 1]?.end ?? span.start, end: span.start, text: ', ' }]);
  }
  return fact;
}

function typeOf(reader: LineReader, keyword: Keyword, first: Piece): FactType | undefined {
  const uses = keywords[keyword].facts;
  const takes = (type: FactType) => uses.some(use => use.type === type);
  if (first.kind === 'word') {
    const word = first.text.toLowerCase();
    const led = uses.find(use => leadWords[use.type]?.includes(word));
    if (led) return led.type;
    if (takes('part')) return 'part';
    if (takes('path')) return 'path';
    const foreign = Object.values(leadWords).some(words => words.includes(word));
    if (!foreign && takes('substance')) return 'substance';
    if (takes('text')) return 'text';
    return unknownWord(reader, keyword, uses, first);
  }
  if (first.kind === 'amount') {
    const type = amountType(keyword, first);
    if (takes(type ?? 'part')) return type ?? 'part';
    if (takes('text')) return 'text';
    return type ? unknown(reader, keyword, uses, first) : unknownUnit(reader, keyword, uses, first);
  }
  if (takes('text') || takes('path')) return takes('text') ? 'text' : 'path';
  return unknown(reader, keyword, uses, first);
}

/** What an amount is, by its unit; a bare number in a count is what germinated. Undefined when the unit tells nothing. */
function amountType(keyword: Keyword, amount: Amount): FactType | undefined {
  if (keyword === 'split') return 'part';
  if (!amount.unit) return keyword === 'count' ? 'count' : undefined;
  const word = amount.unit.image.toLowerCase();
  for (const [type, words] of Object.entries(unitWords)) if (words.includes(word)) return type as FactType;
  const dimension = dimensionOf(amount);
  return dimension === 'mass' ? undefined : dimension;
}

function shapes(uses: readonly FactUse[]): string {
  return listed(uses.map(use => `“${use.shape}”`), 'or');
}

function unknown(reader: LineReader, keyword: Keyword, uses: readonly FactUse[], piece: Piece): undefined {
  const date = piece.kind === 'date' || piece.kind === 'time';
  const suggestion = date
    ? 'The date and the time stand behind the subject, before the first comma.'
    : uses.length > 0 ? `It takes ${shapes(uses)}.` : 'It takes no facts.';
  return reader.report('unknown-fact', piece, { text: reader.slice(piece), keyword, suggestion });
}

function unknownWord(reader: LineReader, keyword: Keyword, uses: readonly FactUse[], piece: Piece): undefined {
  const near = nearest(reader.slice(piece), uses.flatMap(use => leadWords[use.type] ?? []));
  if (!near) return unknown(reader, keyword, uses, piece);
  return reader.report('unknown-fact', piece, { text: reader.slice(piece), keyword, suggestion: `Did you mean “${near}”?` },
    [replacement(piece, near)]);
}

function unknownUnit(reader: LineReader, keyword: Keyword, uses: readonly FactUse[], amount: Amount): undefined {
  const words = uses.flatMap(use => [...(unitWords[use.type] ?? []), ...unitsFor(use.type)]);
  const written = reader.slice(amount);
  if (!amount.unit) {
    const only = uses.find(use => use.type === 'seeds' || use.type === 'seedlings');
    const fixes = only ? [{ title: `Change to “${written} ${only.type}”`, start: amount.end, end: amount.end, text: ` ${only.type}` }] : [];
    const suggestion = words.length > 0 ? `“${keyword}” takes ${shapes(uses)}.` : 'It belongs to no fact.';
    return reader.report('missing-unit', amount, { written, suggestion }, fixes);
  }
  const span = { start: amount.unit.startOffset, end: amount.unit.startOffset + amount.unit.image.length };
  const near = nearest(amount.unit.image, words);
  const suggestion = near ? `Did you mean “${near}”?` : `It takes ${shapes(uses)}.`;
  return reader.report('unknown-fact', near ? span : amount, { text: near ? amount.unit.image : written, keyword, suggestion },
    near ? [replacement(span, near)] : []);
}

function unitsFor(type: FactType): string[] {
  switch (type) {
    case 'duration': case 'temperature': case 'volume': case 'strength': case 'molarMass': return spellingsOf(type);
    default: return [];
  }
}

/** What a unit word counts in a `count` or a `cut`. */
export function countedBy(word: string): Countable | CutClass | undefined {
  const lower = word.toLowerCase();
  return [...countables, ...cutClasses].find(known => known === lower);
}

/** Facts that may not stand twice on a line, or not twice with the same name. */
export function reportRepeats(reader: LineReader, keyword: Keyword, facts: readonly Fact[]): void {
  const many = new Set<FactType>(keywords[keyword].facts.filter(use => use.many).map(use => use.type));
  const seen = new Set<string>();
  for (const fact of facts) {
    if (fact.type === 'stage' || (fact.type === 'text' && many.has('text'))) continue;
    const name = many.has(fact.type) ? nameOf(fact) : fact.type;
    const key = `${fact.type} ${name.toLowerCase()}`;
    if (seen.has(key)) reader.report('repeated-fact', fact, { fact: `“${name}”` });
    seen.add(key);
  }
}

function nameOf(fact: Fact): string {
  switch (fact.type) {
    case 'part': case 'substance': return fact.name.text;
    case 'count': case 'cut': return fact.what;
    default: return fact.type;
  }
}

/** Whether a spelling is a unit that a fact of this keyword could have. */
export function isUnit(word: string): boolean {
  return unitOf(word) !== undefined;
}
