import { problem, type Fix, type Problem, type ProblemCode } from '../model/problems.ts';
import type { Span, Written } from '../model/record.ts';
import type { Piece } from './grammar.ts';

/** Of a line with more problems than anybody reads at once, the rest come to light when these are fixed. */
const MOST = 20;

/** One line on its way to a record: the text, and the problems found so far. */
export class LineReader {
  readonly problems: Problem[] = [];

  constructor(readonly line: string) {}

  /** Whether so many problems were found that reading on is of no use. */
  get full(): boolean {
    return this.problems.length >= MOST;
  }

  report(
    code: ProblemCode, { start, end }: Span,
    values: Readonly<Record<string, string | number>> = {}, fixes: readonly Fix[] = [],
  ): void {
    this.problems.push(problem(code, { start, end }, values, fixes));
  }

  /** Adds a sentence to the message of the last problem. */
  add(sentence: string): void {
    const last = this.problems.pop();
    if (last) this.problems.push({ ...last, message: `${last.message} ${sentence}` });
  }

  slice({ start, end }: Span): string {
    return this.line.slice(start, end);
  }

  /** What stands in a place, fit for a message. */
  shown(span: Span): string {
    return shown(this.slice(span));
  }

  /** The text of pieces from one to the last; the marks around a quoted text are taken off. */
  written(pieces: readonly Piece[], from: number): Written | undefined {
    const first = pieces[from];
    const last = pieces[pieces.length - 1];
    if (!first || !last) return undefined;
    const { start } = first;
    const { end } = last;
    // Marks that stand at a word (`at"the shelf"`) are no token of their own, and quote the text all the same.
    if (first.kind === 'quoted' && first === last || /^"[^"]*"$/.test(this.line.slice(start, end))) {
      return { start: start + 1, end: end - 1, text: this.line.slice(start + 1, end - 1).trim() };
    }
    if (first.kind === 'mark' && first.text === '"' && !this.line.slice(start + 1, end).includes('"')) {
      this.report('unclosed-quote', { start, end }, {}, [insertion(end, '"', 'Close the quotation')]);
    }
    return { start, end, text: this.line.slice(start, end) };
  }
}

/** A text of the journal as a message shows it: cut where it is long, signs that nobody sees made visible. */
export function shown(text: string): string {
  const short = text.length > 60 ? `${text.slice(0, 57).replace(/[\ud800-\udbff]$/, '')}…` : text;
  return short.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '\ufffd');
}

/** From a piece to the last one. */
export function spanFrom(pieces: readonly Piece[], from: number): Span {
  const last = pieces[pieces.length - 1];
  const start = pieces[from]?.start ?? last?.end ?? 0;
  return { start, end: Math.max(start, last?.end ?? 0) };
}

/** Said of a `day` line that cannot be read; the records that rely on it are not blamed. */
export const UNDATED = 'Until you fix it, undated records below have no date.';

/** The fix that puts another word in a place. */
export function replacement({ start, end }: Span, text: string): Fix {
  return { title: `Change to “${shown(text)}”`, start, end, text };
}

/** The fix that writes something where nothing stands. */
export function insertion(at: number, text: string, title: string): Fix {
  return { title: shown(title), start: at, end: at, text };
}
