/** What follows where nothing can follow: behind a whole fact, behind the head. */
import type { Fix } from '../model/problems.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Piece } from './grammar.ts';
import { ABOUT_SEEDS, ESTIMATE_IN_REMARK } from './number-slips.ts';
import { numeralOf } from './numbers.ts';
import { dimensionOf } from './quantities.ts';
import { spanFrom, type LineReader } from './reader.ts';

/** Reports the pieces from one to the last, of a row in which they do not belong. */
export function reportStray(
  reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number, otherwise: string,
): void {
  const span = spanFrom(pieces, from);
  const { suggestion, fixes } = adviceOn(reader, takes, pieces, from) ?? { suggestion: otherwise, fixes: [] };
  reader.report('stray-text', span, { text: reader.shown(span), suggestion }, fixes);
}

/** `24 seeds?`, `3?`: a doubt that must not be taken for a count; any other mark only ends a sentence. */
function adviceOnMark(takes: Taken, pieces: readonly Piece[], from: number, word: string): Advice {
  const [before, number, mark] = [pieces[from - 2], pieces[from - 1]!, pieces[from]!];
  const out: Fix = { title: `Take out “${word}”`, start: number.end, end: mark.end, text: '' };
  if (word !== '?' && word !== '~') return { suggestion: 'Take it out.', fixes: [out] };
  const isSeeds = number.kind === 'amount' && /^seeds?$/i.test(number.unit?.image ?? '');
  if (!isSeeds || !(takes.types.has('seeds') || takes.types.has('part'))) return { suggestion: ESTIMATE_IN_REMARK, fixes: [] };
  const isEstimate = before?.kind === 'amount' || (before?.kind === 'word' && /^about$/i.test(before.text));
  if (isEstimate) return { suggestion: 'Take it out: the number is an estimate without it.', fixes: [out] };
  const text = `about ${numeralOf(number)} ${number.unit!.image}`;
  return { suggestion: ABOUT_SEEDS, fixes: [{ title: 'Write “about”', start: number.start, end: mark.end, text }] };
}

interface Advice {
  readonly suggestion: string;
  readonly fixes: readonly Fix[];
}

function adviceOn(reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number): Advice | undefined {
  const first = pieces[from];
  if (!first) return undefined;
  const before = pieces[from - 1]?.end ?? first.start;
  const comma = (end: number, title: string): Fix => ({ title, start: before, end, text: ', ' });
  const word = reader.shown(first);
  const next = pieces[from + 1];
  if (word === '#') return { suggestion: 'Write a comment or a remark on a line of its own.', fixes: [] };
  const last = pieces.length - 1;
  if (from > 0 && from === last && first.kind === 'mark' && /^[?.!;~]$/.test(word)) return adviceOnMark(takes, pieces, from, word);
  if (from > 0 && from === last && /^water$/i.test(word) && takes.keyword === 'stock') {
    return { suggestion: 'Take it out: a stock is made up with water.', fixes: [{ title: 'Take out “water”', start: before, end: first.end, text: '' }] };
  }
  // `move VER-24/A to cold frame`
  if (next && /^(to|on|onto|into|under|inside)$/i.test(word) && takes.leads.has('at') && !beginsFact(takes, pieces, from + 1)) {
    return { suggestion: 'Write the place after a comma and “at”.', fixes: [{ title: `Change “${word}” to “, at”`, start: before, end: next.start, text: ', at ' }] };
  }
  // `24 seeds at 18 C`: no place. `GA3 at 500 ppm`: the strength of the agent before it.
  const measured = /^(at|in|of|for|with)$/i.test(word) && next?.kind === 'amount' && dimensionOf(next) !== undefined;
  if (measured && !beginsFact(takes, pieces, from + 1) && takes.named === 'substance') {
    return {
      suggestion: 'Write how much right after the name.',
      fixes: [{ title: `Take out “${word}”`, start: first.start, end: next.start, text: '' }],
    };
  }
  if (!measured && (takes.free !== undefined || beginsFact(takes, pieces, from))) {
    const suggestion = takes.free ? 'Put a comma before the text.' : 'Put a comma between two facts.';
    return { suggestion, fixes: [comma(first.start, 'Put a comma before it')] };
  }
  // `and 2 rotted`, `; 2 rotted`, `for 12 weeks`.
  if (first.kind !== 'amount' && word !== '/' && beginsFact(takes, pieces, from + 1)) {
    return {
      suggestion: `Put a comma between two facts, not “${word}”.`,
      fixes: [comma(pieces[from + 1]!.start, `Change “${word}” to a comma`)],
    };
  }
  return undefined;
}
