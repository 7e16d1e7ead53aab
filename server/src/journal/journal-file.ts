/** One file of a journal: its lines with what each says, and the `day` lines that date undated records below them. */
import type { Day } from '../model/day.ts';
import type { ProblemCode } from '../model/problems.ts';
import { parse, type Reading } from '../syntax/parse.ts';
import { LineStore, type Change, type Line, type Range } from '../text/line-store.ts';

export type JournalLine = Line<Reading>;
export type JournalText = LineStore<Reading>;
export type JournalChange = Change<Reading>;

export class JournalFile {
  readonly text: JournalText;
  /** Lines that could not be read in full. */
  readonly faulty = new Set<JournalLine>();
  /** The `day` lines from top to bottom. */
  #days: JournalLine[];

  constructor(readonly name: string, text: string) {
    this.text = new LineStore(name, text, parse);
    this.#days = [...this.text].filter(isDayLine);
    for (const line of this.text) if (line.content.problems.length > 0) this.faulty.add(line);
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

  #follow(change: JournalChange): JournalChange {
    for (const line of change.removed) this.faulty.delete(line);
    for (const line of change.added) if (line.content.problems.length > 0) this.faulty.add(line);
    if (change.removed.some(isDayLine)) this.#days = this.#days.filter(line => line.block);
    const added = change.added.filter(isDayLine);
    if (added.length > 0) this.#days.splice(this.#firstDayFrom(change.at), 0, ...added);
    return change;
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

/** The last part of a file's name or address. */
export function fileName(name: string): string {
  const last = name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
