/** The plant's name on a `lot` and on a `guide`: free text up to the first comma. */
import type { Written } from '../model/record.ts';
import { typeOf, unitType, type Taken } from './fact-types.ts';
import type { Piece, RecordSyntax } from './grammar.ts';
import { dimensionOf } from './quantities.ts';
import type { LineReader } from './reader.ts';
import { reportStray } from './stray.ts';
import { reportNoSubject } from './subject.ts';

/** Reads the name; a fact in it, such as `60 seeds`, lacks its comma. In quotation marks a name may hold anything. */
export function readPlant(reader: LineReader, takes: Taken, pieces: readonly Piece[]): Written | undefined {
  for (let index = 0; index < pieces.length; index++) {
    const from = factIn(takes, pieces, index);
    if (from === 0) {
      reportNoSubject(reader, takes.keyword, pieces[0]!, "the id and then the plant's name");
      return undefined;
    }
    if (from > 0) {
      reportStray(reader, takes, pieces, from, 'Put a comma between two facts.');
      return reader.written(pieces.slice(0, from), 0);
    }
  }
  return reader.written(pieces, 0);
}

/**
 * A lot whose plant stands behind a comma, `lot LIL-23, Lilium regale`: reports that comma, and gives the line as if it
 * were not there.
 */
export function withoutComma(reader: LineReader, takes: Taken, syntax: RecordSyntax): RecordSyntax {
  const { head, facts: [first, ...rest] } = syntax;
  if (!first || head.length !== 1 || first.pieces.length === 0) return syntax;
  if (!first.pieces.every(({ kind }) => kind === 'word') || typeOf(takes, first.pieces)) return syntax;
  const { comma } = first;
  reader.report('stray-text', { start: comma, end: comma + 1 }, {
    text: ',', suggestion: "The plant's name follows the id without a comma.",
  }, [{ title: 'Take out the comma', start: comma, end: comma + 1, text: '' }]);
  return { ...syntax, head: [...head, ...first.pieces], facts: rest };
}

/** Where the fact that shows at a piece begins; -1 when none does. */
function factIn(takes: Taken, pieces: readonly Piece[], index: number): number {
  const piece = pieces[index]!;
  if (piece.kind === 'word') return takes.leads.has(piece.text) ? index : -1;
  if (piece.kind !== 'amount' || !piece.unit) return -1;
  if (unitType(takes, piece)) return index;
  return takes.named === 'substance' && dimensionOf(piece) === 'strength' ? Math.max(0, index - 1) : -1;
}
