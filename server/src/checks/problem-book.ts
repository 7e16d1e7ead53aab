/** The problems of a whole journal, kept up to date: only what an edit touched is checked again. */
import type { Journal } from '../journal/journal.ts';
import { compareLines, type JournalLine } from '../journal/journal-file.ts';
import type { Moment } from '../journal/moment.ts';
import { problemsOfId, problemsOfJournal } from './all.ts';
import type { Found } from './check.ts';

/** The key of what belongs to no single id; no id is empty. */
const WHOLE_JOURNAL = '';

export class ProblemBook {
  readonly #journal: Journal;
  readonly #byId = new Map<string, readonly Found[]>();
  readonly #byFile = new Map<string, Set<string>>();
  /** Ids whose problems change with the clock: something lies in a soak, or waits to be counted. */
  readonly #open = new Set<string>();
  #now: Moment | undefined;
  #files = new Set<string>();

  constructor(journal: Journal) {
    this.#journal = journal;
  }

  /**
   * Checks what was touched since the last time, and what time itself may have changed. Gives the files whose problems
   * may be others now, beside those that were edited.
   */
  update(now: Moment): ReadonlySet<string> {
    this.#files = new Set();
    this.#checkTouched(now);
    return this.#files;
  }

  #checkTouched(now: Moment): void {
    const touched = this.#journal.takeTouched();
    const before = this.#now;
    this.#now = now;
    if (touched === 'all' || before?.day !== now.day) return this.#checkAll(now);
    const due = new Set(touched);
    if (before.minutes !== now.minutes) for (const id of this.#open) due.add(id);
    for (const id of due) this.#check(id, now);
    if (due.size > 0) this.#put(WHOLE_JOURNAL, problemsOfJournal({ journal: this.#journal, now }));
  }

  /** The problems of a file, from top to bottom. */
  of(name: string): Found[] {
    const all: Found[] = [];
    for (const line of this.#journal.files.get(name)?.faulty ?? []) {
      for (const problem of line.content.problems) all.push({ line, problem, related: [] });
    }
    for (const id of this.#byFile.get(name) ?? []) {
      for (const found of this.#byId.get(id) ?? []) if (isIn(found.line, name)) all.push(found);
    }
    return all.sort((a, b) => compareLines(a.line, b.line) || a.problem.start - b.problem.start);
  }

  #checkAll(now: Moment): void {
    for (const file of this.#byFile.keys()) this.#files.add(file);
    this.#byId.clear();
    this.#byFile.clear();
    this.#open.clear();
    for (const id of this.#journal.ids()) this.#check(id, now);
    this.#put(WHOLE_JOURNAL, problemsOfJournal({ journal: this.#journal, now }));
  }

  #check(id: string, now: Moment): void {
    this.#put(id, problemsOfId(id, { journal: this.#journal, now }));
    const lot = this.#journal.lot(id);
    const running = lot && [...lot.batches.values()].some(batch => batch.soaks.some(soak => !soak.end && !batch.closed));
    if (running) this.#open.add(id);
    else this.#open.delete(id);
  }

  #put(id: string, problems: readonly Found[]): void {
    for (const { line } of this.#byId.get(id) ?? []) {
      if (!line.block) continue;
      this.#byFile.get(line.store.name)?.delete(id);
      this.#files.add(line.store.name);
    }
    if (problems.length === 0) {
      this.#byId.delete(id);
      return;
    }
    this.#byId.set(id, problems);
    for (const { line } of problems) {
      const ids = this.#byFile.get(line.store.name) ?? new Set();
      this.#byFile.set(line.store.name, ids.add(id));
      this.#files.add(line.store.name);
    }
  }
}

function isIn(line: JournalLine, name: string): boolean {
  return line.block !== undefined && line.store.name === name;
}
