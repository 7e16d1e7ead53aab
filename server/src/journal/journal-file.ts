/** One file of a journal: its lines with what each says, and the `day` lines that date the undated records below them. */
import type { Day } from '../model/day.ts';
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

  /** The date of the nearest `day` line above a line; undefined where there is none or it cannot be read. */
  dayAbove(line: JournalLine): Day | undefined {
    return this.#days[this.#firstDayFrom(line.number) - 1]?.content.record?.date?.day;
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

export function isDayLine(line: JournalLine): boolean {
  return line.content.record?.keyword === 'day';
}

/** The order of the journal: by file name, then from top to bottom. */
export function compareLines(a: JournalLine, b: JournalLine): number {
  if (a.store !== b.store) return a.store.name < b.store.name ? -1 : 1;
  return a.number - b.number;
}
