import { forEachToken, type Mark, type TokenType } from '../../server/src/features/semantic-tokens.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import type { Span } from '../../server/src/model/record.ts';

interface Token extends Span {
  readonly line: number;
  readonly type: TokenType;
  readonly marks: readonly Mark[];
}

/** The tokens of the lines from one to another. */
export function tokensIn(journal: Journal, file: string, from?: number, to?: number): Token[] {
  const tokens: Token[] = [];
  forEachToken(journal, file, (line, start, end, type, marks) => {
    tokens.push({ line, start, end, type, marks });
  }, from, to);
  return tokens;
}
