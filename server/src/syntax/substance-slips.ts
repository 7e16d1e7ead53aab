/** Slips with what seed lies in: names of several words, another batch, a time in words. */
import { keywords } from '../model/keywords.ts';
import { meant, type Diagnose } from './diagnosis.ts';
import type { Taken } from './fact-types.ts';
import type { Amount, Piece } from './grammar.ts';
import { nearest } from './nearest.ts';
import { dimensionOf } from './quantities.ts';
import { replacement, type LineReader } from './reader.ts';

const longNames: Readonly<Record<string, string>> = {
  'gibberellic acid': 'GA3', 'hydrogen peroxide': 'peroxide', 'potassium nitrate': 'KNO3', 'smoke water': 'smoke',
  'household bleach': 'bleach',
};

interface LongName {
  /** Its last piece. */
  readonly to: number;
  /** The one word that was meant. */
  readonly word: string | undefined;
}

/**
 * Where a name of several words ends, and what it was meant for: `tap water`, `gibberellic acid 500 ppm`, `GA 3`.
 * Undefined for a name of one word.
 */
function longName(reader: LineReader, pieces: readonly Piece[]): LongName | undefined {
  const [first, second, third] = pieces;
  if (first?.kind !== 'word') return undefined;
  if (second?.kind === 'word') {
    if (/^(?:unmeasured|halved|at|in|of|for|with|from|until|and)$/i.test(second.text)) return undefined;
    if (third && third.kind !== 'amount') return undefined;
    const written = reader.slice({ start: first.start, end: second.end });
    return { to: 1, word: longNames[written.toLowerCase()] ?? (/^water$/i.test(second.text) ? 'water' : undefined) };
  }
  // GA 3 500 ppm
  const isSplit = second?.kind === 'amount' && !second.unit && /^\d$/.test(second.number.image) && /^[a-z]+$/i.test(first.text);
  return isSplit && (third?.kind === 'amount' || (!third && /^ga$/i.test(first.text)))
    ? { to: 1, word: `${first.text}${second.number.image}` } : undefined;
}

/** Reports a substance whose name is several words; whether there was one to report. */
export function reportLongName(reader: LineReader, pieces: readonly Piece[]): boolean {
  const found = longName(reader, pieces);
  if (!found) return false;
  const span = { start: pieces[0]!.start, end: pieces[found.to]!.end };
  const suggestion = found.word ? `Did you mean “${found.word}”?` : 'It is one word, such as “GA3” or “water”.';
  reader.report('bad-id', span, { id: reader.shown(span), what: 'the name of an agent or a stock', suggestion },
    found.word ? [replacement(span, found.word)] : []);
  return true;
}

/** `in water`: the seed lies in it anyway. */
export const inLiquid: Diagnose = ({ reader, takes }, [first, second]) => {
  if (takes.named !== 'substance' || takes.leads.has('in') || first?.kind !== 'word' || second?.kind !== 'word') return undefined;
  if (/^(?:cold|hot|warm)$/i.test(first.text) && /^water$/i.test(second.text)) return meant({ start: first.start, end: second.end }, 'water');
  if (!/^(?:in|with)$/i.test(first.text)) return undefined;
  return {
    span: first, suggestion: `Write only “${reader.shown(second)}”.`,
    fixes: [{ title: `Take out “${reader.shown(first)}”`, start: first.start, end: second.start, text: '' }],
  };
};

/** `overnight`. */
export const timeInWords: Diagnose = ({ takes }, [first]) =>
  (first && isTimeInWords(takes, first) ? { span: first, suggestion: 'Write how long, such as “12 h”.' } : undefined);

export function isTimeInWords(takes: Taken, first: Piece): boolean {
  return first.kind === 'word' && takes.units.has('duration') && /^overnight$/i.test(first.text);
}

/** `soak VER-24/A, VER-24/B 2026-01-19, water`. */
export const otherBatch: Diagnose = ({ takes, head }, [first]) => {
  if (keywords[takes.keyword].subject !== 'batch' || first?.kind !== 'word' || !isOtherBatch(head.subject?.text, first)) return undefined;
  return { span: first, suggestion: 'A line is about one batch: write another line for this one.' };
};

export function isOtherBatch(subject: string | undefined, first: Piece): boolean {
  const root = first.kind === 'word' ? first.text.split('/')[0] : undefined;
  return root !== undefined && root !== '' && root === subject?.split('/')[0];
}

/**
 * Whether a fact that looks like a substance begins with a slip of a word that begins another: `purty 90 %`, `keps 4
 * years`, `bougt 2025`, `att fridge`. What follows is nothing that is said of a substance.
 */
export function isSlippedLead(takes: Taken, first: string, second: Piece | undefined): boolean {
  if (!second || isOfSubstance(second)) return false;
  const near = nearest(first, takes.leads.keys());
  if (near === undefined) return false;
  return second.kind !== 'amount' || near === 'purity' || dimensionOf(second) !== 'strength';
}

function isOfSubstance(piece: Piece): boolean {
  if (piece.kind === 'word') return /^(?:unmeasured|halved)$/i.test(piece.text);
  return piece.kind === 'amount' && isMassOrVolume(piece);
}

function isMassOrVolume(amount: Amount): boolean {
  const dimension = dimensionOf(amount);
  return dimension === 'mass' || dimension === 'volume' || (dimension === 'strength' && amount.unit?.image !== '%');
}

