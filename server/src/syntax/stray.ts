/** What follows where nothing can follow: behind a whole fact, behind the head. */
import type { Fix } from '../model/problems.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Piece } from './grammar.ts';
import { spanFrom, type LineReader } from './reader.ts';

/** Reports the pieces from one to the last, of a row in which they do not belong. */
export function reportStray(
  reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number, otherwise: string,
): void {
  const span = spanFrom(pieces, from);
  const { suggestion, fixes } = adviceOn(reader, takes, pieces, from) ?? { suggestion: otherwise, fixes: [] };
  reader.report('stray-text', span, { text: reader.shown(span), suggestion }, fixes);
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
  if (beginsFact(takes, pieces, from)) {
    return { suggestion: 'Separate facts by commas.', fixes: [comma(first.start, 'Separate it by a comma')] };
  }
  const word = reader.shown(first);
  // `and 2 rotted`, `; 2 rotted`, `for 12 weeks`.
  if (first.kind !== 'amount' && word !== '/' && beginsFact(takes, pieces, from + 1)) {
    return {
      suggestion: `Separate facts by “,”, not by “${word}”.`,
      fixes: [comma(pieces[from + 1]!.start, `Change “${word}” to a comma`)],
    };
  }
  return word === '#' ? { suggestion: 'A comment is a line of its own, and so is a remark.', fixes: [] } : undefined;
}
