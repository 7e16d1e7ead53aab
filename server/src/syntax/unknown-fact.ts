/**
 * What to say of a fact that its record does not take. Each diagnosis knows one slip that growers make; the first
 * that recognises it speaks.
 */
import { keywords } from '../model/keywords.ts';
import type { Fix, ProblemCode } from '../model/problems.ts';
import { countables, cutClasses, type Span } from '../model/record.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Amount, Atom, Piece, RecordSyntax } from './grammar.ts';
import type { Head } from './head.ts';
import { listed, nearest } from './nearest.ts';
import { dimensionOf, meantTemperatures } from './quantities.ts';
import { insertion, replacement, shown, spanFrom, type LineReader } from './reader.ts';

/** The record that the fact stands in. */
export interface Place {
  readonly reader: LineReader;
  readonly takes: Taken;
  readonly syntax: RecordSyntax;
  readonly head: Head;
}

interface Diagnosis {
  readonly code?: ProblemCode;
  readonly span: Span;
  readonly suggestion: string;
  readonly fixes?: readonly Fix[];
}

type Diagnose = (place: Place, pieces: readonly Piece[], whole: Span) => Diagnosis | undefined;

export function reportUnknown(place: Place, pieces: readonly Piece[]): void {
  const { reader, takes: { keyword } } = place;
  const whole = spanFrom(pieces, 0);
  let found: Diagnosis | undefined;
  for (const diagnose of diagnoses) if ((found = diagnose(place, pieces, whole))) break;
  const { code = 'unknown-fact', span, suggestion, fixes = [] } = found ?? { span: pieces[0]!, suggestion: offered(place) };
  const written = reader.shown(span);
  reader.report(code, span, { text: written, written, keyword, suggestion, example: suggestion, expected: 'one number' }, fixes);
}

/** What the record does take. */
function offered({ takes }: Place): string {
  if (takes.types.has('count')) return `What can be counted is ${listed(countables, 'or')}.`;
  if (takes.types.has('cut')) return `A cut test sorts into ${listed(cutClasses, 'and')}.`;
  const { facts } = keywords[takes.keyword];
  return facts.length > 0 ? `It takes ${listed(facts.map(({ shape }) => `“${shape}”`), 'or')}.` : 'It takes no facts.';
}

function meaning(text: string): string {
  return `Did you mean “${shown(text)}”?`;
}

/** A date or a time behind a comma belongs into the head, if that has none yet. */
function misplacedMoment(
  { reader, syntax, head }: Place, pieces: readonly Piece[], whole: Span,
): Diagnosis | undefined {
  const kinds = pieces.map(({ kind }) => kind).join(' ');
  if (!/^(date|time|date time)$/.test(kinds)) return undefined;
  const free = kinds === 'time' ? !head.time : !head.date && (kinds === 'date' || !head.time);
  const end = syntax.head.at(-1)?.end;
  const comma = syntax.facts.findLast(fact => fact.comma < whole.start)!.comma;
  const readable = kinds === 'time' || /^\d{4}-\d{2}-\d{2}$/.test((pieces[0] as Atom).text);
  const fixes = free && readable && end !== undefined
    ? [{ title: 'Move it before the first comma', start: end, end: whole.end, text: ` ${reader.slice(whole)}${reader.line.slice(end, comma)}` }]
    : [];
  return { span: whole, suggestion: 'The date and the time stand after the subject, before the first comma.', fixes };
}

/** Digits and signs of other scripts: full-width ones, `三`. */
function foreignForm({ reader }: Place, pieces: readonly Piece[], whole: Span): Diagnosis | undefined {
  const text = reader.slice(whole);
  if (text.length > 60 || !/[^\x00-\x7f]/.test(text)) return undefined;
  const plain = text.normalize('NFKC');
  if (plain !== text && /^[\dA-Za-z=-]/.test(plain)) {
    return { span: whole, suggestion: meaning(plain), fixes: [replacement(whole, plain)] };
  }
  return /^[\p{N}〇一二三四五六七八九十百千]/u.test(text) && !/^\d/.test(text)
    ? { span: pieces[0]!, suggestion: 'Write numbers with the digits 0 to 9.' } : undefined;
}

/** A strength or a mass of nothing. */
function agentless({ reader, takes }: Place, pieces: readonly Piece[], whole: Span): Diagnosis | undefined {
  const [first, second] = pieces;
  if (takes.named !== 'substance' || first?.kind !== 'amount') return undefined;
  const dimension = dimensionOf(first);
  if (dimension !== 'strength' && dimension !== 'mass') return undefined;
  const amount = reader.slice(first);
  if (takes.leads.has('purity') && first.unit?.image === '%') {
    return { span: whole, suggestion: meaning(`purity ${amount}`), fixes: [insertion(first.start, 'purity ', 'Call it the purity')] };
  }
  if (second?.kind === 'word' && pieces.length === 2) {
    const named = `${second.text} ${amount}`;
    return { span: whole, suggestion: meaning(named), fixes: [replacement(whole, named)] };
  }
  return { code: 'missing-agent', span: first, suggestion: `GA3 ${shown(amount)}` };
}

/** `ca. 60 seeds`, `~60 seeds`. */
function vagueNumber({ reader, takes }: Place, pieces: readonly Piece[]): Diagnosis | undefined {
  const [first, second] = pieces;
  if (!first || first.kind === 'amount' || second?.kind !== 'amount' || !beginsFact(takes, pieces, 1)) return undefined;
  return {
    span: first, suggestion: 'Write the number alone; how sure it is can stand in a remark.',
    fixes: [{ title: `Take out “${reader.shown(first)}”`, start: first.start, end: second.start, text: '' }],
  };
}

const numberWords = [
  'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
];

/** `germinated 3`, `three germinated`. */
function wordOrder({ reader, takes }: Place, pieces: readonly Piece[], whole: Span): Diagnosis | undefined {
  const [first, second] = pieces;
  if (first?.kind !== 'word' || pieces.length !== 2) return undefined;
  const counted = (piece: Piece | undefined) => piece?.kind === 'word' && takes.counts.has(piece.text.toLowerCase());
  const number = numberWords.indexOf(first.text.toLowerCase());
  const meant = counted(first) && second?.kind === 'amount' && !second.unit ? `${reader.slice(second)} ${first.text}`
    : number >= 0 && second && counted(second) ? `${number} ${reader.slice(second)}` : undefined;
  if (meant === undefined) return undefined;
  return { span: whole, suggestion: meaning(meant), fixes: [replacement(whole, meant)] };
}

/** `1 000 seeds`. */
function spacedNumber({ reader }: Place, pieces: readonly Piece[]): Diagnosis | undefined {
  const [first, second] = pieces;
  if (first?.kind !== 'amount' || first.unit || second?.kind !== 'amount') return undefined;
  if (!/^\d{3}$/.test(second.number.image)) return undefined;
  const span = { start: first.start, end: second.number.startOffset + 3 };
  const joined = reader.slice(span).replaceAll(/\s/g, '');
  return { code: 'bad-number', span, suggestion: meaning(joined), fixes: [replacement(span, joined)] };
}

/** `20 C/10 C`, `20 / 10 C`. */
function looseTemperatures({ reader, takes }: Place, _: readonly Piece[], whole: Span): Diagnosis | undefined {
  const joined = takes.units.has('temperature') ? meantTemperatures(reader.slice(whole)) : undefined;
  if (joined === undefined) return undefined;
  return { span: whole, suggestion: meaning(joined), fixes: [replacement(whole, joined)] };
}

/** A number with no word behind it. */
function bareNumber(place: Place, [first]: readonly Piece[]): Diagnosis | undefined {
  if (first?.kind !== 'amount' || first.unit) return undefined;
  const number = place.reader.slice(first);
  const units = keywords[place.takes.keyword].facts.flatMap(({ shape }) => /^[\d/]+ (\S+)$/.exec(shape)?.[1] ?? []);
  return {
    code: 'missing-unit', span: first, suggestion: offered(place),
    fixes: units.map(unit => insertion(first.end, ` ${unit}`, `Change to “${number} ${unit}”`)),
  };
}

/** Words that growers use for what the journal calls otherwise. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  germinated: ['sprouted', 'sprouts', 'radicles', 'chitted'], emerged: ['up', 'shoots', 'seedlings'], leaf: ['leaves'],
  rotted: ['mouldy', 'moldy', 'mould', 'mold', 'soft'], died: ['dead'], lost: ['eaten', 'missing'],
  fresh: ['firm', 'viable', 'alive'], dead: ['rotted', 'rotten', 'soft'],
};

function unknownUnit({ takes }: Place, [first]: readonly Piece[]): Diagnosis | undefined {
  if (first?.kind !== 'amount' || !first.unit) return undefined;
  const { unit } = first;
  const span = { start: unit.startOffset, end: first.end };
  const meant = synonymOf(first, takes) ?? (dimensionOf(first) ? undefined : nearest(unit.image, takes.spellings));
  return meant === undefined ? undefined : { span, suggestion: meaning(meant), fixes: [replacement(span, meant)] };
}

function synonymOf({ unit }: Amount, takes: Taken): string | undefined {
  const word = unit?.image.toLowerCase() ?? '';
  return Object.keys(synonyms).find(known => takes.counts.has(known) && synonyms[known]!.includes(word));
}

/** `4 years` of a stock that keeps so long, `G1 10 mL` of the stock taken. */
function wordless({ reader, takes }: Place, pieces: readonly Piece[]): Diagnosis | undefined {
  const [first, second] = pieces;
  const amount = first?.kind === 'word' ? second : first;
  const dimension = amount?.kind === 'amount' ? dimensionOf(amount) : undefined;
  const word = first?.kind === 'word' ? (takes.leads.get('from') === 'draw' && dimension === 'volume' ? 'from' : undefined)
    : dimension === 'volume' ? 'to' : dimension === 'duration' ? 'keeps' : undefined;
  if (word === undefined || !takes.leads.has(word) || amount?.end !== pieces[pieces.length - 1]!.end) return undefined;
  const span = spanFrom(pieces, 0);
  const meant = `${word} ${reader.slice(span)}`;
  return { span, suggestion: meaning(meant), fixes: [insertion(span.start, `${word} `, `Change to “${meant}”`)] };
}

const otherWords: Readonly<Record<string, string>> = {
  cold: 'chill', cool: 'chill', hot: 'warm', till: 'until', harvested: 'collected', picked: 'collected', kept: 'stored',
};

function nearWord({ takes }: Place, [first]: readonly Piece[]): Diagnosis | undefined {
  if (first?.kind !== 'word') return undefined;
  const other = otherWords[first.text.toLowerCase()] ?? '';
  const near = takes.leads.has(other) ? other : nearest(first.text, takes.leads.keys());
  return near === undefined ? undefined : { span: first, suggestion: meaning(near), fixes: [replacement(first, near)] };
}

const diagnoses: readonly Diagnose[] = [
  misplacedMoment, foreignForm, agentless, wordOrder, vagueNumber, spacedNumber, looseTemperatures, bareNumber,
  wordless, unknownUnit, nearWord,
];
