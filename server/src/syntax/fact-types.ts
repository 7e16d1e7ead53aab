/**
 * Which fact a row of pieces is. A fact is known by its first word (`from`, `at`, `until`), by the unit of its number
 * (`24 h`, `3 rotted`), or as a name with an amount (`GA3 500 ppm`, `A 24 seeds`); so nobody has to remember an order.
 */
import { keywords, type Keyword } from '../model/keywords.ts';
import { spellingsOf, unitOf, type Dimension } from '../model/quantity.ts';
import { countables, cutClasses, type FactType } from '../model/record.ts';
import type { Amount, Piece } from './grammar.ts';
import { isSlippedLead, isTimeInWords } from './substance-slips.ts';

/** The words that begin a fact of a type. */
export const leadWords: Partial<Record<FactType, readonly string[]>> = {
  collected: ['collected'], from: ['from'], at: ['at'], stored: ['stored'], in: ['in'], source: ['source'],
  dormancy: ['dormancy'], until: ['until'], on: ['on'], regime: ['regime'], replaces: ['replaces'], purity: ['purity'], bought: ['bought'], keeps: ['keeps'], to: ['to'],
  for: ['for'], draw: ['from'], seeds: ['about'], whither: ['to', 'in'], outdoors: ['outdoors'], look: ['look'], stage: ['warm', 'chill'], solubility: ['solubility'],
};

/** The words that say what a number counts. */
const countWords: Partial<Record<FactType, readonly string[]>> = {
  seeds: ['seeds', 'seed'], seedlings: ['seedlings', 'seedling'], drops: ['drops', 'drop'],
  count: countables, cut: cutClasses,
};

/** Facts that are known by their unit alone. A mass of powder that goes into something is part of a substance. */
const dimensions: Partial<Record<FactType, Dimension>> = {
  duration: 'duration', temperature: 'temperature', volume: 'volume', mass: 'mass', strength: 'strength', molarMass: 'molarMass',
};

const everyLeadWord = new Set(Object.values(leadWords).flat());

/** Whether some record has facts that begin with a word. */
export function isLeadWord(word: string): boolean {
  return everyLeadWord.has(word.toLowerCase());
}

/** What a keyword takes, ready to look up. */
export interface Taken {
  readonly keyword: Keyword;
  readonly types: ReadonlySet<FactType>;
  /** First words, in small letters. */
  readonly leads: ReadonlyMap<string, FactType>;
  /** Words behind a number, in small letters. */
  readonly counts: ReadonlyMap<string, FactType>;
  readonly units: ReadonlyMap<Dimension, FactType>;
  /** Every spelling that may stand behind a number. */
  readonly spellings: readonly string[];
  /** A fact that may begin with any word. */
  readonly named: 'part' | 'substance' | undefined;
  /** A fact that may be anything. */
  readonly free: 'text' | 'path' | undefined;
}

function takenBy(keyword: Keyword): Taken {
  const types = new Set(keywords[keyword].facts.map(({ type }) => type));
  const words = (table: Partial<Record<FactType, readonly string[]>>) =>
    new Map([...types].flatMap(type => (table[type] ?? []).map(word => [word, type] as const)));
  const units = new Map([...types].flatMap(type => (dimensions[type] ? [[dimensions[type], type] as const] : [])));
  const counts = words(countWords);
  return {
    keyword, types, counts, units, leads: words(leadWords),
    spellings: [...counts.keys(), ...[...units.keys()].flatMap(spellingsOf)],
    named: types.has('part') ? 'part' : types.has('substance') ? 'substance' : undefined,
    free: types.has('text') ? 'text' : types.has('path') ? 'path' : undefined,
  };
}

const table = new Map((Object.keys(keywords) as Keyword[]).map(keyword => [keyword, takenBy(keyword)]));

/** What a keyword takes. */
export function taken(keyword: Keyword): Taken {
  return table.get(keyword)!;
}

/** The type of the fact that a row of pieces is; undefined when the keyword takes none that begins so. */
export function typeOf(takes: Taken, pieces: readonly Piece[]): FactType | undefined {
  const first = pieces[0]!;
  switch (first.kind) {
    case 'word': {
      const word = first.text.toLowerCase();
      const led = takes.leads.get(word);
      if (led) return led;
      // `at` is no agent, and no batch, though the records that name these may take no place.
      if (!takes.named || everyLeadWord.has(word)) return takes.free;
      if (takes.named === 'substance' && (isTimeInWords(takes, first) || isSlippedLead(takes, word, pieces[1]))) return takes.free;
      return isOwnFact(takes, pieces[1]) ? takes.free : takes.named;
    }
    case 'amount':
      // A batch may be called 1, and a picture 3.jpg.
      if (takes.named === 'part' || takes.free === 'path') return takes.named === 'part' ? 'part' : 'path';
      return isFromTo(takes, pieces) ? 'seeds' : amountType(takes, first) ?? takes.free;
    default:
      // Of a row that begins with another sign, what names a batch says best why that is none.
      return takes.named === 'part' && first.kind === 'mark' ? 'part' : takes.free;
  }
}

/** `30 to 40 seeds`. */
function isFromTo(takes: Taken, [first, second]: readonly Piece[]): boolean {
  return takes.types.has('seeds') && first?.kind === 'amount' && first.unit?.image.toLowerCase() === 'to'
    && second?.kind === 'amount';
}

/** `about 24 h` is no agent of 24 h. */
function isOwnFact(takes: Taken, second: Piece | undefined): boolean {
  if (takes.named !== 'substance') return false;
  const type = second?.kind === 'amount' ? unitType(takes, second) : undefined;
  return type !== undefined && type !== 'volume';
}

function amountType(takes: Taken, amount: Amount): FactType | undefined {
  if (amount.unit) return unitType(takes, amount);
  // A bare number in a count is what germinated.
  return takes.types.has('count') ? 'count' : undefined;
}

/** The type of fact that the unit of an amount tells; undefined when it tells none that the keyword takes. */
export function unitType(takes: Taken, { unit }: Amount): FactType | undefined {
  if (!unit) return undefined;
  const found = unitOf(unit.image);
  return (found && takes.units.get(found.dimension)) ?? takes.counts.get(unit.image) ??
    takes.counts.get(unit.image.toLowerCase());
}

/**
 * Whether a row of pieces can hardly be anything but a fact of its own: it begins with a lead word, with an amount
 * that the keyword takes, or with a name and an amount.
 */
export function beginsFact(takes: Taken, pieces: readonly Piece[], from: number): boolean {
  const first = pieces[from];
  // A bare number is what germinated only where nothing follows it.
  if (first?.kind === 'amount' && !first.unit && from < pieces.length - 1) return false;
  if (first?.kind === 'amount') return amountType(takes, first) !== undefined;
  if (first?.kind !== 'word') return false;
  const word = first.text.toLowerCase();
  if (takes.leads.has(word)) return true;
  const second = pieces[from + 1];
  return takes.named !== undefined && second?.kind === 'amount' && !everyLeadWord.has(word) && !isOwnFact(takes, second);
}
