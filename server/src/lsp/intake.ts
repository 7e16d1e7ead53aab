/**
 * Takes new long texts into their journals slice by slice, so that others get their turn in between, and the first
 * problems of a text need not wait for its end. What is left of a text always belongs at the end of what is there: an
 * edit that reaches further than that has the rest read first.
 */
import type { Range } from '../text/line-store.ts';
import type { Room } from './room.ts';
import { afterTurns, ROUND_TRIP, type Later } from './turns.ts';

/** How much is read at a time. */
export interface Pace {
  /** Characters; a piece goes on to the end of its line. */
  readonly piece: number;
  /** Milliseconds after which a turn reads no other piece. */
  readonly turn: number;
}

/** What is read for the first time costs more than a slice may take, and a screen of lines is there at once. */
const usual: Pace = { piece: 4096, turn: 10 };

interface Rest {
  readonly room: Room;
  readonly text: string;
  /** So much of the text was put into the journal; there it may have been edited. */
  at: number;
  readonly whole: Promise<void>;
  readonly end: () => void;
}

export class Intake {
  readonly #rests = new Map<string, Rest>();
  readonly #changed: (room: Room, file: string) => void;
  readonly #isOpen: (file: string) => boolean;
  readonly #later: Later;
  readonly #pace: Pace;
  #isWaiting = false;

  /** `changed` is called when more of a text is there; texts that `isOpen` come before others. */
  constructor(
    changed: (room: Room, file: string) => void, isOpen: (file: string) => boolean, later: Later, pace: Pace = usual,
  ) {
    this.#changed = changed;
    this.#isOpen = isOpen;
    this.#later = later;
    this.#pace = pace;
  }

  /** Puts the beginning of a text into a journal that does not have the file. The rest follows by itself. */
  begin(room: Room, file: string, text: string): void {
    if (this.#endOfPiece(text, 0) === text.length) {
      room.journal.set(file, text);
      return;
    }
    room.journal.set(file, '');
    const rest = restOf(room, text);
    this.#rests.set(file, rest);
    room.await(rest.whole);
    this.#readOn(file, rest);
    // What was read first is shown before more is read.
    this.#wait();
  }

  /** Edits a text that may not be there as a whole. */
  edit({ journal }: Room, file: string, range: Range, text: string): void {
    // What is there ends with the end of a line: below it stands the empty line at which the rest begins.
    if (range.end.line >= (journal.files.get(file)?.text.lineCount ?? 0) - 1) this.finish(file);
    journal.edit(file, range, text);
    if (journal.files.get(file)?.isMarked) this.finish(file);
  }

  /** Reads all that is left of a text at once. */
  finish(file: string): void {
    const rest = this.#rests.get(file);
    if (rest) this.#read(file, rest, rest.text.length);
  }

  /** Lets go of what is left of a text: the file is gone or has another text. */
  drop(file: string): void {
    this.#rests.get(file)?.end();
    this.#rests.delete(file);
  }

  /** The whole of a text of which a part is left; undefined where none is. */
  textOf(file: string): string | undefined {
    const rest = this.#rests.get(file);
    return rest && rest.room.journal.files.get(file)!.text.text() + rest.text.slice(rest.at);
  }

  /** Resolves when nothing of a text is left. */
  whole(file: string): Promise<void> | undefined {
    return this.#rests.get(file)?.whole;
  }

  /** Resolves when nothing is left of the texts that are open. */
  async open(): Promise<void> {
    for (const [file, { whole }] of this.#rests) if (this.#isOpen(file)) await whole;
  }

  #wait(): void {
    if (this.#isWaiting) return;
    this.#isWaiting = true;
    afterTurns(this.#later, ROUND_TRIP, () => {
      this.#isWaiting = false;
      const all = [...this.#rests];
      const next = all.find(([file]) => this.#isOpen(file)) ?? all[0];
      if (!next) return;
      const [file, rest] = next;
      this.#readOn(file, rest);
      this.#changed(rest.room, file);
      this.#wait();
    });
  }

  #readOn(file: string, rest: Rest): void {
    const stop = performance.now() + this.#pace.turn;
    do this.#read(file, rest, this.#endOfPiece(rest.text, rest.at));
    while (rest.at < rest.text.length && performance.now() < stop);
  }

  #read(file: string, rest: Rest, to: number): void {
    const { room: { journal }, text, at } = rest;
    const end = { line: Infinity, character: 0 };
    journal.edit(file, { start: end, end }, text.slice(at, to));
    rest.at = to;
    if (to === text.length) this.drop(file);
    // With marks of a merge all is read anew at every change, and what is wrong with a line may not count in the end.
    else if (journal.files.get(file)!.isMarked) this.#read(file, rest, text.length);
  }

  /** A line is read once and whole. */
  #endOfPiece(text: string, from: number): number {
    const end = text.indexOf('\n', from + this.#pace.piece);
    return end < 0 ? text.length : end + 1;
  }
}

function restOf(room: Room, text: string): Rest {
  let end: () => void;
  const whole = new Promise<void>(resolve => (end = resolve));
  return { room, text, at: 0, whole, end: () => end() };
}
