import { problem, type Fix, type Problem, type ProblemCode } from '../model/problems.ts';
import type { Span, Written } from '../model/record.ts';
import type { Piece } from './grammar.ts';

/** One line on its way to a record: the text, and the problems found so far. */
export class LineReader {
  readonly problems: Problem[] = [];

  constructor(readonly line: string) {}

  report(code: ProblemCode, span: Span, values: Record<string, string | number> = {}, fixes: readonly Fix[] = []): undefined {
    this.problems.push(problem(code, span, values, fixes));
    return undefined;
  }

  slice({ start, end }: Span): string {
    return this.line.slice(start, end);
  }

  /** The text of a row of pieces as one, blanks between them kept; the marks around a quoted text are taken off. */
  written(pieces: readonly Piece[]): Written | undefined {
    const first = pieces[0];
    const last = pieces.at(-1);
    if (!first || !last) return undefined;
    const span = { start: first.start, end: last.end };
    if (first.kind === 'quoted' && pieces.length === 1) {
      return { start: span.start + 1, end: span.end - 1, text: this.line.slice(span.start + 1, span.end - 1).trim() };
    }
    if (first.kind === 'mark' && first.text === '"') {
      this.report('unclosed-quote', span, {}, [{ title: 'Close the quotation', start: span.end, end: span.end, text: '"' }]);
    }
    return { ...span, text: this.slice(span) };
  }
}

export function spanOf(pieces: readonly Piece[]): Span {
  return { start: pieces[0]?.start ?? 0, end: pieces.at(-1)?.end ?? 0 };
}

/** The fix that puts another word in a place. */
export function replacement({ start, end }: Span, text: string): Fix {
  return { title: `Change to “${text}”`, start, end, text };
}
