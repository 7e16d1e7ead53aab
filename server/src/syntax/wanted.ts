/** What a word of a fact needs behind it. */
import type { Fix } from '../model/problems.ts';
import type { Span } from '../model/record.ts';
import type { Amount, Piece } from './grammar.ts';
import { spanFrom, type LineReader } from './reader.ts';

/** Reports that the fact needs something else than what begins at a piece, or than nothing. */
export function reportValue(
  reader: LineReader, pieces: readonly Piece[], from: number, expected: string, example: string,
  found?: Span, fixes: readonly Fix[] = [],
): void {
  const here = found ?? pieces[from];
  reader.report('bad-value', here ?? spanFrom(pieces, 0), {
    fact: `“${reader.shown(pieces[0]!)}”`, expected, example, instead: here ? `, not “${reader.shown(here)}”` : ' after it',
  }, fixes);
}

/** The amount at a place in the row; a problem when something else or nothing stands there. */
export function amountAt(
  reader: LineReader, pieces: readonly Piece[], index: number, expected: string, example: string,
): Amount | undefined {
  const piece = pieces[index];
  if (piece?.kind === 'amount') return piece;
  reportValue(reader, pieces, index, expected, example);
  return undefined;
}
