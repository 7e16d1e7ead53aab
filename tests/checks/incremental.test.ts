import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { doTo, step, text, type Step } from '../support/arbitrary-edits.ts';
import { plainJournal, plainProblems } from '../support/plain.ts';

/** A journal as an editor drives it: what was published of each file, and what is there now. */
class Desk {
  readonly journal = new Journal();
  readonly book = new ProblemBook(this.journal);
  settings = {};
  /** How many things that were never checked are checked at a time. */
  atATime = Infinity;
  now: Moment = { day: dayOf(2026, 1, 12)!, minutes: 600 };
  #shown: Record<string, unknown> = {};
  #wasWhole = false;

  do(step: Step): void {
    doTo(this.journal, step);
    if (step.kind === 'settings') this.settings = { soakHours: step.soakHours };
    else if (step.kind === 'time') this.now = { day: this.now.day + step.days, minutes: step.minutes };
    else if (step.kind === 'check') this.check();
  }

  /** Publishes what is said to have changed; what was left out must be the same as before. */
  check(): void {
    let left = this.atATime;
    const changed = this.book.update(this.now, () => --left <= 0);
    if (!this.book.isComplete) {
      // What is shown in full does not go away while an edit is looked at.
      expect(this.#wasWhole).toBe(false);
      this.#checkPart(changed);
      return;
    }
    this.#wasWhole = true;
    const problems = plainProblems(this.book, this.journal.files.keys());
    for (const [name, shown] of Object.entries(this.#shown)) {
      if (!changed.has(name)) expect(problems[name] ?? [], `${name} was not said to have changed`).toEqual(shown);
    }
    this.#shown = problems;
  }

  /** Of what is not known in full yet, nothing is shown that is wrong. */
  #checkPart(changed: ReadonlySet<string>): void {
    expect(changed.size).toBe(0);
    const other = fresh(this);
    other.check();
    for (const name of this.journal.files.keys()) {
      const all = plain(other, name);
      expect(all).toEqual(expect.arrayContaining(plain(this, name)));
    }
  }
}

function plain({ book }: Desk, name: string): string[] {
  return book.of(name).map(({ line: { number }, problem: { code, start, message } }) => `${number} ${start} ${code} ${message}`);
}

/** The same texts, read by a journal that knows of no edit. */
function fresh({ journal, now, settings }: Desk): Desk {
  const other = new Desk();
  other.now = now;
  other.journal.settings = settings;
  for (const [name, { text: store }] of journal.files) other.journal.set(name, store.text());
  return other;
}

function expectSame(desk: Desk): void {
  const other = fresh(desk);
  do desk.check(); while (!desk.book.isComplete);
  other.check();
  const files = desk.journal.files.keys();
  expect(plainProblems(desk.book, files)).toEqual(plainProblems(other.book, other.journal.files.keys()));
  expect(plainJournal(desk.journal)).toEqual(plainJournal(other.journal));
}

describe('a journal that is edited', () => {
  it('says and reports the same as one that is read afresh', () => {
    const texts = fc.array(text, { minLength: 1, maxLength: 3 });
    const atATime = fc.constantFrom(Infinity, Infinity, 1, 2, 3);
    fc.assert(fc.property(texts, fc.array(step, { maxLength: 14 }), atATime, (files, steps, most) => {
      const desk = new Desk();
      desk.atATime = most;
      files.forEach((each, index) => desk.journal.set(`${'cab'[index]!}.germ`, each));
      for (const each of steps) desk.do(each);
      expectSame(desk);
    }), { numRuns: 150 });
  });
});
