/** The facts of a record, each between two commas. */
import { keywords, type FactUse, type Keyword } from '../model/keywords.ts';
import { noneUnread, type Fact, type FactType, type Written } from '../model/record.ts';
import { readers } from './fact-readers.ts';
import { typeOf, type Taken } from './fact-types.ts';
import type { Piece, RecordSyntax } from './grammar.ts';
import type { Head } from './head.ts';
import { meantTemperatures } from './quantities.ts';
import { replacement, shown, spanFrom, type LineReader } from './reader.ts';
import { reportStray } from './stray.ts';
import { isOtherBatch, reportLongName } from './substance-slips.ts';
import { reportUnknown } from './unknown-fact.ts';

/** What was read, and the names that begin what could not be. */
export interface ReadFacts {
  readonly facts: Fact[];
  readonly unread: readonly Written[];
}

/** Reads every fact; whatever cannot be read is reported. */
export function readFacts(reader: LineReader, takes: Taken, syntax: RecordSyntax, head: Head): ReadFacts {
  const facts: Fact[] = [];
  let unread = noneUnread;
  const seen = new Set<string>();
  for (const { comma, pieces } of syntax.facts) {
    if (reader.full) break;
    const fact = readFact(reader, takes, syntax, head, comma, pieces);
    if (!fact) {
      const named = unreadName(reader, takes, pieces);
      if (named) unread = [...unread, named];
      continue;
    }
    const name = nameOf(fact, takes);
    if (name !== undefined && seen.has(name)) reportRepeat(reader, takes.keyword, facts, fact, comma);
    else if (name !== undefined) seen.add(name);
    facts.push(fact);
  }
  // An array that grew holds room for more; there is one for every line of a journal.
  return { facts: facts.slice(), unread };
}

/** `G1` of `G1 5,5 mL` and of `from G1 1 spoon`: something was taken of it, whatever the rest means. */
function unreadName(reader: LineReader, takes: Taken, pieces: readonly Piece[]): Written | undefined {
  const type = pieces[0] && typeOf(takes, pieces);
  const piece = type === 'substance' ? pieces[0] : type === 'draw' ? pieces[1] : undefined;
  return piece?.kind === 'word' ? { text: reader.slice(piece), start: piece.start, end: piece.end } : undefined;
}

function readFact(
  reader: LineReader, takes: Taken, syntax: RecordSyntax, head: Head, comma: number, pieces: readonly Piece[],
): Fact | undefined {
  const first = pieces[0];
  if (!first) {
    const only = syntax.facts.length === 1;
    if (only && takes.keyword === 'count') reportNotCounted(reader, comma, head);
    else reportEmpty(reader, takes.keyword, comma, only);
    return undefined;
  }
  const type = takes.named === 'substance' && keywords[takes.keyword].subject === 'batch' && isOtherBatch(head.subject?.text, first) ? undefined : typeOf(takes, pieces);
  if (!type) {
    reportUnknown({ reader, takes, syntax, head }, pieces);
    return undefined;
  }
  if (type === 'substance' && reportLongName(reader, pieces)) return undefined;
  const fact = readers[type](reader, pieces, takes.keyword);
  if (fact && fact.end < pieces[pieces.length - 1]!.end) reportBehind(reader, takes, fact, pieces);
  return fact;
}

/** Reports a comma with nothing behind it. `only`: without it the record has no fact at all. */
export function reportEmpty(reader: LineReader, keyword: Keyword, comma: number, only: boolean): void {
  const end = reader.line.slice(comma + 1).trim() === '' ? reader.line.length : comma + 1;
  const needed = only && keywords[keyword].facts.some(({ required }) => required);
  reader.report('empty-fact', { start: comma, end: comma + 1 }, {},
    needed ? [] : [{ title: 'Take out the comma', start: comma, end, text: '' }]);
}

/** A line of a counting round that is still to be filled in: no mistake, unless it stays so. */
function reportNotCounted(reader: LineReader, comma: number, { subject }: Head): void {
  const end = reader.line.length;
  reader.report('not-counted', { start: comma, end: comma + 1 }, { batch: subject?.text ?? 'the batch' },
    [{ title: 'Nothing new: write 0', start: comma, end, text: ', 0' }]);
}

/** Reports what follows a whole fact without a comma. */
function reportBehind(reader: LineReader, takes: Taken, fact: Fact, pieces: readonly Piece[]): void {
  const from = pieces.findIndex(({ start }) => start >= fact.end);
  const whole = spanFrom(pieces, 0);
  const meant = fact.type === 'temperature' ? meantTemperatures(reader.slice(whole)) : undefined;
  if (meant !== undefined) {
    reader.report('unknown-fact', whole, {
      keyword: takes.keyword, text: reader.shown(whole), suggestion: `Did you mean “${meant}”?`,
    }, [replacement(whole, meant)]);
    return;
  }
  reportStray(reader, takes, pieces, from, fact.type === 'substance' && from === 1
    ? 'Write the agent or the stock as one word, then how much of it.' : 'Put a comma between two facts.');
}

/** What may not stand twice on a line; undefined for what may. */
function nameOf(fact: Fact, takes: Taken): string | undefined {
  switch (fact.type) {
    case 'part': case 'substance': return fact.name.text.toLowerCase();
    case 'count': case 'cut': return fact.what;
    case 'stage': return undefined;
    case 'replaces': return `replaces ${fact.value.text}`;
    default: return takes.named ? `${fact.type} ` : fact.type;
  }
}

function reportRepeat(reader: LineReader, keyword: Keyword, facts: readonly Fact[], fact: Fact, comma: number): void {
  const use = keywords[keyword].facts.find(({ type }) => type === fact.type)!;
  const named = fact.type === 'part' || fact.type === 'substance' ? fact.name.text
    : fact.type === 'count' || fact.type === 'cut' ? fact.what : fact.type === 'replaces' ? fact.value.text : undefined;
  const first = facts.find(({ type }) => type === fact.type)!;
  const span = { start: first.start, end: fact.end };
  const one = fact.type === 'text' && !reader.slice(span).includes('"')
    ? [{ title: 'Make it one text', ...span, text: `"${reader.slice(span)}"` }] : [];
  reader.report('repeated-fact', fact, { fact: named === undefined ? nounOf(use) : `“${shown(named)}”` }, [
    ...one, { title: 'Take out the second', start: comma, end: fact.end, text: '' },
  ]);
}

const nouns: Readonly<Record<FactType, string>> = {
  seeds: 'the number of seeds', seedlings: 'the number of seedlings', drops: 'the number of drops',
  collected: 'the date of collection', bought: 'the date of purchase', from: 'a source', at: 'a place',
  stored: 'the storage', in: 'a medium', source: 'a reference', dormancy: 'a dormancy', until: 'an end', on: 'a day of judging', regime: 'a regime',
  replaces: 'an older lot',
  for: 'a plant', purity: 'a purity', draw: 'the stock used', duration: 'a length of time', keeps: 'how long it keeps', volume: 'a volume', mass: 'a mass',
  to: 'the volume made', temperature: 'a temperature', strength: 'a strength', solubility: 'a solubility', molarMass: 'a molar mass',
  whither: 'where it went', outdoors: 'that it is outdoors', look: 'the next look', text: 'a text', path: 'the path of a picture', part: 'a part', substance: 'an agent', stage: 'a stage', count: 'a count', cut: 'a class',
};

/** A kind of fact as a sentence names it: `a place`. */
function nounOf({ type }: FactUse): string {
  return nouns[type];
}

/** A kind of fact with an example: `a place, such as “at bag 3 slot 2”`. */
export function inWords(use: FactUse): string {
  return use.type === 'text' || use.type === 'path' ? nounOf(use) : `${nounOf(use)}, such as “${use.shape}”`;
}
