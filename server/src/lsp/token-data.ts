/** Semantic tokens as numbers: the protocol's form, five of them a token, and what changed in it. */
import type { SemanticTokens, SemanticTokensDelta, SemanticTokensEdit } from './protocol.ts';

/** Numbers in a part. */
const ROOM = 5 * 4096;

/** Takes tokens in the order of the text. Their numbers lie in parts, so that few are copied as they grow. */
export class TokenData {
  readonly #parts: number[][] = [];
  #part: number[] = [];
  #line = 0;
  #start = 0;

  /** LSP 3.17: line and start are counted from the token before, the start only within its line. */
  add(line: number, start: number, length: number, type: number, bits: number): void {
    if (this.#part.length === ROOM) {
      this.#parts.push(this.#part);
      this.#part = [];
    }
    this.#part.push(line - this.#line, line === this.#line ? start - this.#start : start, length, type, bits);
    this.#line = line;
    this.#start = start;
  }

  numbers(): number[] {
    return ([] as number[]).concat(...this.#parts, this.#part);
  }
}

/** What a document was coloured with last. */
interface Last {
  readonly id: string;
  readonly numbers: readonly number[];
}

/** The answers about each open document, so that the next can be what changed since. */
export class TokenAnswers {
  readonly #last = new Map<string, Last>();
  #answers = 0;

  full(uri: string, data: TokenData): SemanticTokens {
    const { id, numbers } = this.#keep(uri, data);
    return { resultId: id, data: numbers };
  }

  /** All tokens, where the client names another answer than the last. */
  since(uri: string, previous: string, data: TokenData): SemanticTokens | SemanticTokensDelta {
    const before = this.#last.get(uri);
    if (before?.id !== previous) return this.full(uri, data);
    const { id, numbers } = this.#keep(uri, data);
    return { resultId: id, edits: editsBetween(before.numbers, numbers) };
  }

  /** Lets go of documents that are not open any more. */
  keepOnly(isOpen: (uri: string) => boolean): void {
    for (const uri of this.#last.keys()) if (!isOpen(uri)) this.#last.delete(uri);
  }

  #keep(uri: string, data: TokenData): { id: string; numbers: number[] } {
    const last = { id: String(++this.#answers), numbers: data.numbers() };
    this.#last.set(uri, last);
    return last;
  }
}

/** One edit, of all between the first and the last difference. */
function editsBetween(before: readonly number[], now: readonly number[]): SemanticTokensEdit[] {
  const shorter = Math.min(before.length, now.length);
  let start = 0;
  while (start < shorter && before[start] === now[start]) start++;
  if (start === before.length && start === now.length) return [];
  let tail = 0;
  while (tail < shorter - start && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  return [{ start, deleteCount: before.length - start - tail, data: now.slice(start, now.length - tail) }];
}
