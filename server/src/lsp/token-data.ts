/**
 * Semantic tokens in the protocol's form, five numbers a token, and what changed in it. Hundreds of thousands of
 * numbers are kept as the digits that are sent, a fifth of the room that a list of them would take.
 */
import { knownList } from './known-json.ts';
import type { SemanticTokens, SemanticTokensDelta, SemanticTokensEdit } from './protocol.ts';

const [COMMA, ZERO, OPEN, CLOSE] = [0x2c, 0x30, 0x5b, 0x5d];

/** More bytes than the five numbers of a token take. */
const TOKEN_ROOM = 64;

/** Takes tokens in the order of the text. */
export class TokenData {
  #bytes = new Uint8Array(4096).fill(OPEN, 0, 1);
  #length = 1;
  #line = 0;
  #start = 0;

  /** LSP 3.17: line and start are counted from the token before, the start only within its line. */
  add(line: number, start: number, length: number, type: number, bits: number): void {
    if (this.#length + TOKEN_ROOM > this.#bytes.length) this.#grow();
    this.#write(line - this.#line);
    this.#write(line === this.#line ? start - this.#start : start);
    this.#write(length);
    this.#write(type);
    this.#write(bits);
    this.#line = line;
    this.#start = start;
  }

  /** The numbers as JSON, without the brackets. */
  numbers(): Uint8Array {
    return this.#bytes.subarray(1, Math.max(1, this.#length - 1));
  }

  /** All tokens, as a list for an answer. */
  list(): number[] {
    // In the place of the last comma, behind which no token comes any more.
    const end = Math.max(1, this.#length - 1);
    this.#bytes[end] = CLOSE;
    return knownList(this.#bytes.subarray(0, end + 1));
  }

  #grow(): void {
    const bytes = new Uint8Array(this.#bytes.length * 2);
    bytes.set(this.#bytes);
    this.#bytes = bytes;
  }

  /** A number and a comma. */
  #write(number: number): void {
    if (number >= 10) this.#writeDigits(number);
    else this.#bytes[this.#length++] = ZERO + number;
    this.#bytes[this.#length++] = COMMA;
  }

  #writeDigits(number: number): void {
    const rest = Math.floor(number / 10);
    if (rest > 0) this.#writeDigits(rest);
    this.#bytes[this.#length++] = ZERO + number % 10;
  }
}

/** What a document was coloured with last. */
interface Last {
  readonly id: string;
  readonly numbers: Uint8Array;
}

/** The answers about each open document, so that the next can be what changed since. */
export class TokenAnswers {
  readonly #last = new Map<string, Last>();
  #answers = 0;

  full(uri: string, data: TokenData): SemanticTokens {
    const { id } = this.#keep(uri, data);
    return { resultId: id, data: data.list() };
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

  #keep(uri: string, data: TokenData): Last {
    const last = { id: String(++this.#answers), numbers: data.numbers() };
    this.#last.set(uri, last);
    return last;
  }
}

/** One edit, of all between the first and the last number that differs. */
function editsBetween(before: Uint8Array, now: Uint8Array): SemanticTokensEdit[] {
  const shorter = Math.min(before.length, now.length);
  let same = 0;
  while (same < shorter && before[same] === now[same]) same++;
  if (same === before.length && same === now.length) return [];
  while (!isStart(before, same)) same--;
  let tail = 0;
  while (tail < shorter - same && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  while (tail > 0 && !(isStart(before, before.length - tail) && isStart(now, now.length - tail))) tail--;
  const [gone, come] = [before.subarray(same, before.length - tail), now.subarray(same, now.length - tail)];
  return [{ start: numbersIn(before.subarray(0, same)), deleteCount: numbersIn(gone), data: read(come) }];
}

/** Whether a number begins there. */
function isStart(numbers: Uint8Array, at: number): boolean {
  return at === 0 || numbers[at - 1] === COMMA;
}

/** How many there are in a part that begins with a number and ends with one or with its comma. */
function numbersIn(part: Uint8Array): number {
  let count = part.length === 0 || part.at(-1) === COMMA ? 0 : 1;
  for (const byte of part) if (byte === COMMA) count++;
  return count;
}

function read(part: Uint8Array): number[] {
  const text = new TextDecoder().decode(part.at(-1) === COMMA ? part.subarray(0, -1) : part);
  return text === '' ? [] : text.split(',').map(Number);
}
