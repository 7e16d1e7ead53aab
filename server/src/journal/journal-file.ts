/** One file of a journal: its lines with what each says, and the `day` lines that date undated records below them. */
import type { Day } from '../model/day.ts';
import type { ProblemCode } from '../model/problems.ts';
import { parse, type Reading } from '../syntax/parse.ts';
import { conflictBlocks, isMarker, type ConflictBlock } from '../text/conflict-blocks.ts';
import { LineStore, type Change, type Line, type Range } from '../text/line-store.ts';

export type JournalLine = Line<Reading>;
export type JournalText = LineStore<Reading>;

/** What a change did to the lines that count. */
export interface JournalChange extends Change<Reading> {
  /** Lines below have other numbers now. */
  readonly isRenumbered: boolean;
}

export class JournalFile {
  readonly text: JournalText;
  /** Lines that could not be read in full. */
  readonly faulty = new Set<JournalLine>();
  /** What a merge left open. Only the first version of each counts until somebody has decided. */
  conflicts: readonly ConflictBlock[] = [];
  /** Lines that look like the marks of a conflict; most files have none, and cost nothing. */
  readonly #marks = new Set<JournalLine>();
  /** The marks of conflicts, and the versions that do not count. */
  #uncounted: ReadonlySet<JournalLine> = new Set();
  /** The `day` lines from top to bottom. */
  #days: JournalLine[];

  /** `read` reads a line as `parse` does. */
  constructor(readonly name: string, text: string, read: (line: string) => Reading = parse) {
    this.text = new LineStore(name, text, read);
    for (const line of this.text) if (isMarker(line.text)) this.#marks.add(line);
    this.#readConflicts();
    this.#days = this.counted().filter(isDayLine);
    for (const line of this.counted()) if (line.content.problems.length > 0) this.faulty.add(line);
  }

  /** The lines that are part of the journal, from top to bottom. */
  counted(): JournalLine[] {
    const lines = this.text.lines();
    return this.#uncounted.size === 0 ? lines : lines.filter(line => !this.#uncounted.has(line));
  }

  /** Whether a line looks like the mark of a conflict: what stands below one may count or not. */
  get isMarked(): boolean {
    return this.#marks.size > 0;
  }

  edit(range: Range, text: string): JournalChange {
    return this.#follow(this.text.edit(range, text));
  }

  reset(text: string): JournalChange {
    return this.#follow(this.text.reset(text));
  }

  /** The date of a record: its own, else that of the nearest `day` line above; undefined where that cannot be read. */
  dayOf(line: JournalLine): Day | undefined {
    const own = line.content.record?.date?.day;
    return own !== undefined || hasUnreadDate(line) ? own : this.dayAbove(line.number);
  }

  /** The date of the nearest `day` line above a line; undefined where there is none or it cannot be read. */
  dayAbove(number: number): Day | undefined {
    return this.#days[this.#firstDayFrom(number) - 1]?.content.record?.date?.day;
  }

  /** Whether a `day` line stands above a line, be it one that cannot be read. */
  isBelowDay(number: number): boolean {
    return this.#firstDayFrom(number) > 0;
  }

  /** The `day` lines from top to bottom. */
  get days(): readonly JournalLine[] {
    return this.#days;
  }

  /** The date of the last `day` line of the file; undefined where there is none or it cannot be read. */
  lastDay(): Day | undefined {
    return this.#days.at(-1)?.content.record?.date?.day;
  }

  /** The lines from a number down to the next `day` line or the end. */
  *linesToNextDay(from: number): IterableIterator<JournalLine> {
    const next = this.#days[this.#firstDayFrom(from)];
    const stop = next ? next.number : this.text.lineCount;
    for (let n = from; n < stop; n++) yield this.text.at(n);
  }

  #follow(change: Change<Reading>): JournalChange {
    for (const line of change.removed) this.#marks.delete(line);
    for (const line of change.added) if (isMarker(line.text)) this.#marks.add(line);
    if (this.#marks.size > 0 || this.#uncounted.size > 0) return this.#followConflicts(change);
    for (const line of change.removed) this.faulty.delete(line);
    for (const line of change.added) if (line.content.problems.length > 0) this.faulty.add(line);
    if (change.removed.some(isDayLine)) this.#days = this.#days.filter(line => line.block);
    const added = change.added.filter(isDayLine);
    if (added.length > 0) this.#days.splice(this.#firstDayFrom(change.at), 0, ...added);
    return { ...change, isRenumbered: change.added.length !== change.removed.length };
  }

  /** A mark can make all below it count or not: such a file is read anew, which is rare and soon over. */
  #followConflicts({ added, removed }: Change<Reading>): JournalChange {
    const isNew = new Set(added);
    const old = this.text.lines().filter(line => !isNew.has(line));
    const before = [...old, ...removed].filter(line => !this.#uncounted.has(line));
    this.#readConflicts();
    const now = this.counted();
    this.#days = now.filter(isDayLine);
    this.faulty.clear();
    for (const line of now) if (line.content.problems.length > 0) this.faulty.add(line);
    return { at: 0, removed: before, added: now, isRenumbered: true };
  }

  #readConflicts(): void {
    const lines = this.#marks.size > 0 ? this.text.lines() : [];
    this.conflicts = conflictBlocks(lines.map(({ text }) => text));
    this.#uncounted = new Set(this.conflicts.flatMap(({ start, base, middle, end }) =>
      [lines[start]!, ...lines.slice(base ?? middle, end + 1)]));
  }

  /** Index of the first `day` line at or below a line number. */
  #firstDayFrom(number: number): number {
    let low = 0;
    let high = this.#days.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#days[middle]!).number < number) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** Whether a date stands in the head of the record, in front of the facts, that could not be read. */
export function hasUnreadDate({ text, content: { problems } }: Pick<JournalLine, 'text' | 'content'>): boolean {
  return problems.some(({ code, start }) => unreadDates.has(code) && !text.slice(0, start).includes(','));
}

const unreadDates: ReadonlySet<string> = new Set(['impossible-date', 'day-first-date', 'bad-date'] satisfies ProblemCode[]);

export function isDayLine(line: JournalLine): boolean {
  return line.content.record?.keyword === 'day';
}

/** The order of the journal: by file name, then from top to bottom. */
function compareLines(a: JournalLine, b: JournalLine): number {
  if (a.store !== b.store) return a.store.name < b.store.name ? -1 : 1;
  return a.number - b.number;
}

export function inJournalOrder(lines: Iterable<JournalLine>): JournalLine[] {
  const all = [...lines];
  // As a rule they came in this order.
  const isSorted = all.every((line, n) => n === 0 || compareLines(all[n - 1]!, line) <= 0);
  return isSorted ? all : all.sort(compareLines);
}

/** Things of the journal in the order of the lines that they stand in. */
export function inOrderOf<Item>(items: Iterable<Item>, lineOf: (item: Item) => JournalLine): Item[] {
  const byLine = new Map([...items].map(item => [lineOf(item), item]));
  return inJournalOrder(byLine.keys()).map(line => byLine.get(line)!);
}

/** The last part of a file's name or address. */
export function fileName(name: string): string {
  const last = name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
