/** Slips with words: what stands in the wrong place or the wrong order, and what is called by another name. */
import { dormancies, type Span } from '../model/record.ts';
import { isLeadWord } from './fact-types.ts';
import { factBefore, meant, type Diagnose } from './diagnosis.ts';
import type { Atom, Piece } from './grammar.ts';
import { listed, nearest } from './nearest.ts';
import { dimensionOf } from './quantities.ts';
import { insertion } from './reader.ts';

/** A date or a time behind a comma belongs into the head, if that has none yet. */
export const misplacedMoment: Diagnose = ({ reader, syntax, head }, pieces, whole) => {
  const kinds = pieces.map(({ kind }) => kind).join(' ');
  if (!/^(date|time|date time)$/.test(kinds)) return undefined;
  const free = kinds === 'time' ? !head.time : !head.date && (kinds === 'date' || !head.time);
  const end = syntax.head.at(-1)?.end;
  const comma = syntax.facts.findLast(fact => fact.comma < whole.start)!.comma;
  const readable = kinds === 'time' || /^\d{4}-\d{2}-\d{2}$/.test((pieces[0] as Atom).text);
  const fixes = free && readable && end !== undefined
    ? [{ title: 'Move it before the first comma', start: end, end: whole.end, text: ` ${reader.slice(whole)}${reader.line.slice(end, comma)}` }]
    : [];
  return { span: whole, suggestion: 'Write the date and the time before the first comma.', fixes };
};

/** Digits and signs of other scripts: full-width ones, `三`. */
export const foreignForm: Diagnose = ({ reader }, pieces, whole) => {
  const text = reader.slice(whole);
  if (text.length > 60 || !/[^\x00-\x7f]/.test(text)) return undefined;
  const plain = text.normalize('NFKC');
  if (plain !== text && /^[\dA-Za-z=-]/.test(plain)) return meant(whole, plain);
  return /^[\p{N}〇一二三四五六七八九十百千]/u.test(text) && !/^\d/.test(text)
    ? { span: pieces[0]!, suggestion: 'Write numbers with the digits 0 to 9.' } : undefined;
};

const numberWords = [
  'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
];

/** `three germinated`, `germinated 3`, `total 9`, `none`. */
export const wordOrder: Diagnose = ({ reader, takes }, pieces, whole) => {
  const [first, second] = pieces;
  const counted = (piece: Piece | undefined) => piece?.kind === 'word' && takes.counts.has(piece.text.toLowerCase());
  if (first?.kind !== 'word' || pieces.length > 2) return undefined;
  const word = first.text.toLowerCase();
  if (takes.types.has('count') && /^(none|nothing|nil)$/.test(word) && !second) return meant(whole, '0');
  if (takes.types.has('count') && !second && numberWords.includes(word)) return meant(whole, String(numberWords.indexOf(word)));
  if (second?.kind === 'amount' && !second.unit) {
    const n = reader.slice(second);
    if (takes.types.has('count') && word === 'total') return meant(whole, `=${n}`);
    return counted(first) ? meant(whole, `${n} ${first.text}`) : undefined;
  }
  const number = numberWords.indexOf(word);
  return number >= 0 && second && counted(second) ? meant(whole, `${number} ${reader.slice(second)}`) : undefined;
};

/** `4 years` of a stock that keeps so long, `G1 10 mL` of the stock taken, `PD` of a dormancy. */
export const wordless: Diagnose = ({ reader, takes }, pieces, whole) => {
  const [first, second] = pieces;
  const draws = takes.leads.get('from') === 'draw';
  if (draws && pieces.some(piece => piece.kind === 'word' && /^water$/i.test(piece.text))) {
    return { span: whole, suggestion: 'Write the whole volume, stock and water together, such as “to 20 mL”.' };
  }
  if (draws && first?.kind === 'amount' && second?.kind === 'word' && dimensionOf(first) === 'volume') {
    return meant({ start: first.start, end: second.end }, `from ${second.text} ${reader.slice(first)}`);
  }
  const amount = first?.kind === 'word' ? second : first;
  const dimension = amount?.kind === 'amount' ? dimensionOf(amount) : undefined;
  const word = first?.kind !== 'word' ? (dimension === 'volume' ? 'to' : dimension === 'duration' ? 'keeps' : undefined)
    : dormancies.some(each => each === first.text.toUpperCase()) ? 'dormancy'
      : draws && dimension === 'volume' ? 'from' : undefined;
  const last = amount ?? first;
  if (word === undefined || !takes.leads.has(word) || last?.end !== whole.end) return undefined;
  return meant(whole, `${word} ${reader.slice(whole)}`);
};

const otherWords: Readonly<Record<string, string>> = {
  cold: 'chill', cool: 'chill', hot: 'warm', till: 'until', harvested: 'collected', picked: 'collected', kept: 'stored',
  on: 'at', onto: 'at', under: 'at', inside: 'at', to: 'at', into: 'in', at: 'on', by: 'on', after: 'on',
};

export const nearWord: Diagnose = ({ takes }, [first]) => {
  if (first?.kind !== 'word') return undefined;
  const other = otherWords[first.text.toLowerCase()] ?? '';
  return meant(first, takes.leads.has(other) ? other : nearest(first.text, takes.leads.keys()));
};

/** `from Garden, Kew`: a text that holds a comma. */
export const partedText: Diagnose = (place, [first], whole) => {
  const before = factBefore(place, whole);
  const lead = before?.pieces[0];
  const text = before?.pieces[1];
  if ((first?.kind !== 'word' && first?.kind !== 'amount') || lead?.kind !== 'word' || !text) return undefined;
  if (!/^(from|at|stored|in|source)$/i.test(lead.text) || !place.takes.leads.has(lead.text.toLowerCase())) return undefined;
  const span: Span = { start: text.start, end: whole.end };
  const written = place.reader.slice(span);
  return {
    span: whole, suggestion: 'Put text that contains a comma in quotation marks.',
    fixes: written.includes('"') ? [] : [{ title: `Make it one text with “${place.reader.shown(text)}”`, ...span, text: `"${written}"` }],
  };
};

/** `bench 3` where a place can stand, `own seed` where a source can: a text whose first word is missing. */
export const placeless: Diagnose = (place, pieces, whole) => {
  const { reader, takes } = place;
  const [first] = pieces;
  if (first?.kind !== 'word' || isLeadWord(first.text) || !takes.leads.has('at')) return undefined;
  if (pieces.some(({ kind }) => kind === 'date' || kind === 'time')) return undefined;
  if (takes.units.has('temperature') && /temperature/i.test(reader.slice(whole))) {
    return { span: whole, suggestion: 'Write the degrees, such as “20 C”.' };
  }
  const leads = ['from', 'stored', 'in', 'at', ...(pieces.length === 1 ? ['regime'] : [])]
    .filter(lead => takes.leads.has(lead) && takes.leads.get(lead) !== 'draw');
  return {
    span: whole, suggestion: `Say what it is: ${listed(leads.map(lead => `“${lead} …”`), 'or')}.`,
    fixes: leads.map(lead => insertion(whole.start, `${lead} `, `Change to “${lead} ${reader.slice(whole)}”`)),
  };
};
