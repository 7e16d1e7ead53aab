/**
 * A text kept as lines, so that an edit costs what it touches and not what the file weighs.
 *
 * Lines live in blocks of a few hundred. A line knows its block and a block its first line's number, so a line pushed
 * down by an insert above it keeps its identity and everything that hangs on it; only the blocks are renumbered.
 */
import { splitLines, type LineEnd, type SplitLine } from './split-lines.ts';

export interface Position {
  /** From 0. */
  readonly line: number;
  /** UTF-16 code units from the line's start. */
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** One line of a store: its text without its end, and what was read from it. */
export class Line<Content> {
  /** Set by the store that holds the line; undefined once the line was removed. */
  block: Block<Content> | undefined;
  /** Where in its block the line was found last. */
  index = 0;

  constructor(
    readonly text: string,
    readonly end: LineEnd,
    readonly content: Content,
  ) {}

  /** The text that the line stands in. Throws a RangeError on a line that was removed. */
  get store(): LineStore<Content> {
    if (!this.block) throw new RangeError('this line was removed from its text');
    return this.block.store;
  }

  /** The line's number from 0 in its store. Throws a RangeError on a line that was removed. */
  get number(): number {
    if (!this.block) throw new RangeError('this line was removed from its text');
    return this.block.numberOf(this);
  }
}

class Block<Content> {
  first = 0;
  lines: Line<Content>[];
  readonly store: LineStore<Content>;

  constructor(store: LineStore<Content>, lines: Line<Content>[]) {
    this.store = store;
    this.lines = lines;
    for (const line of lines) line.block = this;
    this.#index();
  }

  numberOf(line: Line<Content>): number {
    this.store.renumber();
    if (this.lines[line.index] !== line) this.#index();
    return this.first + line.index;
  }

  /** All lines of the block at once: whoever asks for one number mostly asks for many. */
  #index(): void {
    this.lines.forEach((line, index) => (line.index = index));
  }
}

/** What an edit did: at line `at`, `removed` lines went and `added` lines came. */
export interface Change<Content> {
  readonly at: number;
  readonly removed: readonly Line<Content>[];
  readonly added: readonly Line<Content>[];
}

const FULL = 512;

export class LineStore<Content> {
  #blocks: Block<Content>[] = [];
  #count = 0;
  #stale = false;
  readonly #read: (text: string) => Content;

  /** `read` makes a line's content from its text, once for each line that comes. `name` says whose text it is. */
  constructor(readonly name: string, text: string, read: (text: string) => Content) {
    this.#read = read;
    const lines = splitLines(text).map(line => this.#make(line));
    this.#blocks = this.#cut(lines);
    this.#count = lines.length;
    this.#stale = true;
  }

  get lineCount(): number {
    return this.#count;
  }

  /** The line with this number from 0. Throws a RangeError outside the text. */
  at(number: number): Line<Content> {
    const block = this.#blocks[this.#blockIndex(number)];
    const line = block?.lines[number - block.first];
    if (!line) throw new RangeError(`no line ${number} in a text of ${this.#count} lines`);
    return line;
  }

  [Symbol.iterator](): IterableIterator<Line<Content>> {
    return this.lines().values();
  }

  /** All lines from top to bottom. */
  lines(): Line<Content>[] {
    return ([] as Line<Content>[]).concat(...this.#blocks.map(({ lines }) => lines));
  }

  /** Goes through the lines from one number to another, both included and where there are such lines. */
  forEach(see: (line: Line<Content>, number: number) => void, from = 0, to = Infinity): void {
    const last = Math.min(to, this.#count - 1);
    let number = Math.max(0, from);
    for (let index = this.#blockIndex(number); number <= last; index++) {
      const { first, lines } = this.#blocks[index]!;
      const stop = Math.min(last + 1, first + lines.length);
      for (; number < stop; number++) see(lines[number - first]!, number);
    }
  }

  /** The whole text, or what stands in a range; line ends as they were written. */
  text(range?: Range): string {
    if (!range) {
      const parts: string[] = [];
      for (const line of this) parts.push(line.text, line.end);
      return parts.join('');
    }
    const { start, end } = this.#ordered(range);
    if (start.line === end.line) return this.at(start.line).text.slice(start.character, end.character);
    const first = this.at(start.line);
    const parts = [first.text.slice(start.character), first.end];
    for (let n = start.line + 1; n < end.line; n++) parts.push(this.at(n).text, this.at(n).end);
    parts.push(this.at(end.line).text.slice(0, end.character));
    return parts.join('');
  }

  offsetAt(position: Position): number {
    const { line, character } = this.clamp(position);
    let offset = character;
    for (const block of this.#blocks) {
      this.renumber();
      const stop = Math.min(block.lines.length, line - block.first);
      for (let i = 0; i < stop; i++) offset += width(block.lines[i]!);
      if (line < block.first + block.lines.length) break;
    }
    return offset;
  }

  positionAt(offset: number): Position {
    let left = Math.max(0, offset);
    let number = 0;
    for (const line of this) {
      if (left < width(line) || number === this.#count - 1) {
        return { line: number, character: Math.min(left, line.text.length) };
      }
      left -= width(line);
      number++;
    }
    return { line: 0, character: 0 };
  }

  /** The nearest position that exists, as the language server protocol asks of one past a line's or the text's end. */
  clamp({ line, character }: Position): Position {
    if (line < 0) return { line: 0, character: 0 };
    if (line >= this.#count) return { line: this.#count - 1, character: this.at(this.#count - 1).text.length };
    return { line, character: Math.min(Math.max(0, character), this.at(line).text.length) };
  }

  /** Replaces a range by a text. Lines outside the touched ones keep their identity. */
  edit(range: Range, text: string): Change<Content> {
    const { start, end } = this.#ordered(range);
    const last = this.at(end.line);
    let from = start.line;
    let window = this.at(from).text.slice(0, start.character) + text + last.text.slice(end.character) + last.end;
    // A '\n' that comes to stand behind a lone '\r' joins it to one line end.
    if (window.startsWith('\n') && from > 0 && this.at(from - 1).end === '\r') {
      from--;
      window = `${this.at(from).text}\r${window}`;
    }
    const added = splitLines(window);
    // A window inside the text ends with its own line end: the empty rest behind that is no line of its own.
    if (last.end !== '') added.pop();
    return this.#replace(from, end.line - from + 1, added.map(line => this.#make(line)));
  }

  /** Takes over a new text, keeping every line before the first and after the last difference. */
  reset(text: string): Change<Content> {
    const fresh = splitLines(text);
    const shorter = Math.min(fresh.length, this.#count);
    const same = (mine: Line<Content>, its: SplitLine) => mine.text === its.text && mine.end === its.end;
    let head = 0;
    while (head < shorter && same(this.at(head), fresh[head]!)) head++;
    let tail = 0;
    while (
      tail < shorter - head &&
      same(this.at(this.#count - 1 - tail), fresh[fresh.length - 1 - tail]!)
    ) tail++;
    const added = fresh.slice(head, fresh.length - tail).map(line => this.#make(line));
    return this.#replace(head, this.#count - head - tail, added);
  }

  /** Brings the blocks' first numbers up to date; called before any of them is read. */
  renumber(): void {
    if (!this.#stale) return;
    let first = 0;
    for (const block of this.#blocks) {
      block.first = first;
      first += block.lines.length;
    }
    this.#stale = false;
  }

  #replace(at: number, count: number, added: Line<Content>[]): Change<Content> {
    const from = this.#blockIndex(at);
    const to = count > 0 ? this.#blockIndex(at + count - 1) : from;
    const first = this.#blocks[from]!;
    const last = this.#blocks[to]!;
    const offset = at - first.first;
    let removed: Line<Content>[];
    if (from === to && first.lines.length - count + added.length <= 2 * FULL) {
      removed = first.lines.splice(offset, count, ...added);
      for (const line of added) line.block = first;
      if (first.lines.length === 0 && this.#blocks.length > 1) this.#blocks.splice(from, 1);
    } else {
      removed = this.#blocks.slice(from, to + 1).flatMap(block => block.lines).slice(offset, offset + count);
      const kept = last.lines.slice(at + count - last.first);
      this.#blocks.splice(from, to - from + 1, ...this.#cut([...first.lines.slice(0, offset), ...added, ...kept]));
    }
    for (const line of removed) line.block = undefined;
    this.#count += added.length - removed.length;
    this.#stale ||= added.length !== removed.length || from !== to;
    return { at, removed, added };
  }

  #cut(lines: Line<Content>[]): Block<Content>[] {
    const blocks: Block<Content>[] = [];
    for (let i = 0; i < lines.length; i += FULL) blocks.push(new Block(this, lines.slice(i, i + FULL)));
    return blocks;
  }

  #blockIndex(number: number): number {
    this.renumber();
    let low = 0;
    let high = this.#blocks.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#blocks[middle]!).first <= number) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #ordered({ start, end }: Range): Range {
    const a = this.clamp(start);
    const b = this.clamp(end);
    const forward = a.line < b.line || (a.line === b.line && a.character <= b.character);
    return forward ? { start: a, end: b } : { start: b, end: a };
  }

  #make({ text, end }: SplitLine): Line<Content> {
    return new Line(text, end, this.#read(text));
  }
}

function width(line: Line<unknown>): number {
  return line.text.length + line.end.length;
}
