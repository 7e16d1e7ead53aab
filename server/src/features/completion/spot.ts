/** What can be written at a position, and what of it stands there already. */
import type { JournalLine } from '../../journal/journal-file.ts';
import { keywords, type Keyword } from '../../model/keywords.ts';
import type { Dimension } from '../../model/quantity.ts';
import type { FactType, Span } from '../../model/record.ts';
import { taken, type Taken } from '../../syntax/fact-types.ts';
import type { Amount, Piece } from '../../syntax/grammar.ts';
import { dimensionOf } from '../../syntax/quantities.ts';
import { runEnd } from '../../syntax/subject.ts';
import { segmentAt, type Run, type Segment } from './segment.ts';

type FactSegment = Extract<Segment, { part: 'fact' }>;

type What =
  /** The keyword; `alone`: the line holds nothing else. */
  | { readonly kind: 'start'; readonly alone: boolean }
  | { readonly kind: 'subject' | 'plant'; readonly keyword: Keyword }
  /** `dated`: a date stands in front of it. */
  | { readonly kind: 'moment'; readonly keyword: Keyword; readonly dated: boolean }
  /** The first word of a fact. */
  | { readonly kind: 'fact'; readonly keyword: Keyword; readonly segment: Span }
  /** Behind the word that begins a fact of a type. */
  | { readonly kind: 'value'; readonly keyword: Keyword; readonly segment: Span; readonly type: FactType }
  /** A number with its unit: a fact by itself, or behind a name. `number` is what is written of it. */
  | {
    readonly kind: 'amount'; readonly keyword: Keyword; readonly segment: Span; readonly number: string | undefined;
    readonly of: 'fact' | 'substance' | 'part' | 'draw' | 'stage' | 'halved' | Worded; readonly name: string;
    /** What stands in front of it, of a fact that takes two. */
    readonly has?: Dimension;
  }
  /** Behind a mass of powder, or behind a purity, where a word may tell more of it. */
  | { readonly kind: 'behind'; readonly keyword: Keyword; readonly segment: Span; readonly of: 'mass' | 'purity' };

/** Facts that are one quantity behind their word. */
type Worded = 'keeps' | 'to' | 'purity' | 'solubility';

/** Columns `start` to `end` hold what is being written, up to the cursor and behind it. */
export type Spot = What & Span;
export type SpotOf<Kind extends Spot['kind']> = Extract<Spot, { readonly kind: Kind }>;

/** Undefined where nothing can be offered: in prose, and behind what is whole. */
export function spotAt(line: JournalLine, cursor: number): Spot | undefined {
  const segment = segmentAt(line, cursor);
  switch (segment?.part) {
    case undefined: return undefined;
    case 'keyword': return { kind: 'start', alone: segment.rest === '', start: segment.start, end: segment.end };
    case 'head': return headSpot(segment.keyword, segment.runs, cursor);
    case 'fact': return factSpot(line.text, segment, cursor);
  }
}

function headSpot(keyword: Keyword, runs: readonly Run[], cursor: number): Spot | undefined {
  const current = runs.find(({ start, end }) => start <= cursor && cursor <= end);
  const index = current ? runs.indexOf(current) : runs.filter(({ end }) => end < cursor).length;
  const span = { start: current?.start ?? cursor, end: current?.end ?? cursor };
  const dated = runs.slice(1, index).some(isDate);
  const { subject, dated: takesDate } = keywords[keyword];
  if (subject === 'date') return index === 0 ? { kind: 'moment', keyword, dated: false, ...span } : undefined;
  if (subject === 'plant') return { kind: 'plant', keyword, ...fromRun(runs, 0, cursor) };
  if (index === 0) return { kind: 'subject', keyword, ...span };
  if (subject === 'new lot' && !dated && !(current && /^\d/.test(current.text))) {
    return { kind: 'plant', keyword, ...fromRun(runs.filter((run, n) => n < 1 || !isDate(run)), 1, cursor) };
  }
  return takesDate === 'no' ? undefined : { kind: 'moment', keyword, dated, ...span };
}

function isDate({ text }: Run): boolean {
  return /^\d+[-./]\d/.test(text);
}

/** From one run to the last, whatever of that the cursor is in. */
function fromRun(runs: readonly Run[], index: number, cursor: number): Span {
  return { start: Math.min(runs[index]?.start ?? cursor, cursor), end: Math.max(runs.at(-1)?.end ?? cursor, cursor) };
}

function factSpot(text: string, { keyword, pieces, ...rest }: FactSegment, cursor: number): Spot | undefined {
  const takes = taken(keyword);
  const segment = { start: rest.start, end: rest.end };
  if (isProse(takes)) return undefined;
  const first = pieces[0];
  const begin = { kind: 'fact', keyword, segment } as const;
  if (!first) return { ...begin, start: cursor, end: cursor };
  const isName = first.kind === 'word' || takes.named === 'part';
  const end = isName ? Math.max(first.end, runEnd(text, first.start)) : first.end;
  if (cursor < first.start || (isName && cursor <= end)) return { ...begin, start: Math.min(first.start, cursor), end };
  if (isName) return behindSpot(text, takes, pieces, segment, cursor);
  if (pieces.length > 1) return undefined;
  if (first.kind === 'mark' && keyword === 'count' && text.slice(first.start, cursor) === '=') {
    return { ...begin, kind: 'amount', of: 'fact', name: '', number: '=', start: first.start, end: first.end };
  }
  const span = first.kind === 'amount' ? amountSpan(first, cursor) : undefined;
  return span && { ...begin, kind: 'amount', of: 'fact', name: '', number: (first as Amount).number.image, ...span };
}

/** Every fact of the record is a text or a path. */
function isProse({ types }: Taken): boolean {
  return [...types].every(type => type === 'text' || type === 'path');
}

/** Behind the first word of a fact. */
function behindSpot(
  text: string, { keyword, leads, named }: Taken, pieces: readonly Piece[], segment: Span, cursor: number,
): Spot | undefined {
  const [first, second] = pieces;
  const name = text.slice(first!.start, first!.end);
  const type = leads.get(name.toLowerCase());
  const amount = { kind: 'amount', keyword, segment } as const;
  if (type === 'keeps' || type === 'to' || type === 'purity' || type === 'solubility') {
    const isOver = type === 'purity' && isBehindUnit(second, cursor);
    return isOver ? { kind: 'behind', keyword, segment, of: type, ...restSpan(pieces.slice(2), cursor) }
      : amountSpot({ ...amount, of: type, name }, pieces.slice(1, 2), cursor);
  }
  if (type === 'stage') {
    const has = second?.kind === 'amount' && isBehindUnit(second, cursor) ? dimensionOf(second) : undefined;
    return amountSpot({ ...amount, of: type, name, ...(has && { has }) }, pieces.slice(1), cursor);
  }
  if (type === 'draw' && second && cursor > second.end) {
    return amountSpot({ ...amount, of: type, name: text.slice(second.start, second.end) }, pieces.slice(2), cursor);
  }
  if (type) return { kind: 'value', keyword, segment, type, ...restSpan(pieces.slice(1), cursor) };
  if (keyword === 'stock' && named && isBehindUnit(second, cursor)) return halvedSpot(segment, pieces, cursor);
  return named && amountSpot({ ...amount, of: named, name }, pieces.slice(1), cursor);
}

/** Behind the mass of a stock: how often the packet was halved. */
function halvedSpot(segment: Span, pieces: readonly Piece[], cursor: number): Spot | undefined {
  const [, mass, word] = pieces;
  if (mass?.kind !== 'amount' || dimensionOf(mass) !== 'mass') return undefined;
  const base = { keyword: 'stock', segment } as const;
  if (word && cursor > word.end) return amountSpot({ ...base, kind: 'amount', of: 'halved', name: '' }, pieces.slice(3, 4), cursor);
  return { ...base, kind: 'behind', of: 'mass', ...restSpan(pieces.slice(2), cursor) };
}

function isBehindUnit(piece: Piece | undefined, cursor: number): boolean {
  return piece?.kind === 'amount' && piece.unit !== undefined && cursor > piece.end;
}

/** From the first of the pieces, or where the cursor is, to the last. */
function restSpan(pieces: readonly Piece[], cursor: number): Span {
  return { start: Math.min(pieces[0]?.start ?? cursor, cursor), end: Math.max(pieces.at(-1)?.end ?? cursor, cursor) };
}

type AmountBase = Omit<Extract<What, { kind: 'amount' }>, 'number'>;

/** A place for an amount among the pieces behind a name. */
function amountSpot(base: AmountBase, pieces: readonly Piece[], cursor: number): Spot | undefined {
  const touched = pieces.find(({ start, end }) => start <= cursor && cursor <= end)
    ?? pieces.findLast(({ end }) => end < cursor);
  const open = { start: cursor, end: cursor };
  if (!touched) return { ...base, number: undefined, ...open };
  if (touched.kind === 'amount') {
    const span = amountSpan(touched, cursor);
    if (span) return { ...base, number: touched.number.image, ...span };
  }
  const { start, end } = touched;
  if (touched.kind === 'word' && cursor <= end) return { ...base, number: undefined, start, end };
  // A stage takes two of them.
  return base.of === 'stage' && cursor > end && pieces.length < 2 ? { ...base, number: undefined, ...open } : undefined;
}

/** A number and its unit, when the cursor is behind the number and not yet behind the unit. */
function amountSpan({ number, unit, start, end }: Amount, cursor: number): Span | undefined {
  const numberEnd = number.startOffset + number.image.length;
  if (cursor < numberEnd || (unit && cursor > end)) return undefined;
  return { start, end: Math.max(end, cursor) };
}
