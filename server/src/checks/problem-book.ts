/** The problems of a whole journal, kept up to date: only what an edit touched is checked again. */
import type { Journal } from '../journal/journal.ts';
import { isBefore, type Moment } from '../journal/moment.ts';
import type { Touched } from '../journal/touched.ts';
import type { Problem, ProblemCode } from '../model/problems.ts';
import { problemsOfFile, problemsOfId, problemsOfJournal, problemsOfPlant, problemsOfSlot } from './all.ts';
import type { Found } from './check.ts';
import { lookAlikes } from './look-alike.ts';
import { onceForEachRow } from './missing-date.ts';
import { entriesAbout, isSpeltOddly, NameIndex } from './name-index.ts';
import { PlantIndex } from './plant-index.ts';
import { SlotIndex } from './slot-index.ts';

/** The key of what belongs to no single id; no id is empty. */
const WHOLE_JOURNAL = '';
/** Before a plant's name in the key of its page; no id and no slot has a line end. */
const PLANT = '\n';
/** The key of names that look like others. */
const LOOK_ALIKES = '\t';

/** Codes whose messages offer something else of the journal. */
const offering: ReadonlySet<ProblemCode> =
  new Set(['unknown-lot', 'unknown-stock', 'unknown-regime', 'unknown-agent', 'unknown-id']);

/** The problems of one id, one slot or one plant, and the files that they are in or speak of. */
interface Page {
  readonly problems: readonly Found[];
  readonly files: ReadonlySet<string>;
  readonly related: ReadonlySet<string>;
}

export class ProblemBook {
  readonly #journal: Journal;
  readonly #touched: () => Touched;
  readonly #pages = new Map<string, Page>();
  /** By file the ids that have problems in it, and those whose problems speak of it. */
  readonly #idsIn = new Map<string, Set<string>>();
  readonly #idsAbout = new Map<string, Set<string>>();
  /** Ids whose problems change with the clock: something lies in a soak, or will. */
  readonly #running = new Set<string>();
  /** Ids that are named and not defined: what is offered in their place depends on all definitions. */
  readonly #unknown = new Set<string>();
  /** Ids with a record that spells a name oddly. Few journals have any; the others need no index of names. */
  readonly #odd = new Set<string>();
  #names: NameIndex | undefined;
  readonly #slots = new SlotIndex();
  readonly #plants = new PlantIndex();
  /** Ids that were never checked: a long journal that was just read is checked bit by bit. */
  readonly #unchecked = new Set<string>();
  /** What waits for the last of them: slots and plants in which something changed; and files whose problems did. */
  readonly #slotsDue = new Set<string>();
  readonly #plantsDue = new Set<string>();
  readonly #changed = new Set<string>();
  #now: Moment | undefined;

  constructor(journal: Journal) {
    this.#journal = journal;
    this.#touched = journal.follow();
  }

  /**
   * Checks what was touched since the last time, and what time itself may have changed. Gives the files whose problems
   * may be others now, or may speak of lines that have other numbers now.
   *
   * What was never checked may take more than one call: when `isOver` says so, the rest is left to the next, and no
   * file is given before all is checked. Later calls check all that was touched.
   */
  update(now: Moment, isOver: () => boolean = () => false): ReadonlySet<string> {
    const touched = this.#touched();
    const before = this.#now;
    const isFirst = !before || !this.isComplete;
    this.#now = now;
    const changed = this.#changed;
    for (const file of touched.files) changed.add(file);
    const all = touched.all || before?.day !== now.day;
    const due = all
      ? new Set([...this.#journal.ids(), ...touched.ids])
      : this.#due(touched.ids, touched.definitions, before.minutes !== now.minutes);
    if (before) for (const id of due) this.#follow(id, now);
    else for (const id of due) this.#unchecked.add(id);
    const ends = isFirst ? isOver : () => false;
    takeUntil(ends, this.#unchecked, id => this.#follow(id, now));
    if (all || touched.common) {
      this.#put(WHOLE_JOURNAL, problemsOfJournal({ journal: this.#journal, now }), changed);
      toggle(this.#odd, WHOLE_JOURNAL, this.#journal.globalEntries('guide').some(isSpeltOddly));
    }
    for (const file of touched.renumbered) {
      for (const id of this.#idsAbout.get(file) ?? []) for (const name of this.#pages.get(id)!.files) changed.add(name);
    }
    if (this.#unchecked.size === 0) {
      // These hang on more than one id.
      takeUntil(ends, this.#slotsDue, slot => this.#put(slot, problemsOfSlot(this.#slots.staysIn(slot)), changed));
      takeUntil(ends, this.#plantsDue, plant => {
        this.#put(PLANT + plant, problemsOfPlant(this.#plants.lotsOf(plant)), changed);
      });
    }
    if (!this.isComplete) return new Set();
    return this.#close(isFirst || all || touched.common ? [...due, WHOLE_JOURNAL] : [...due]);
  }

  /** Whether every id, slot and plant was checked. */
  get isComplete(): boolean {
    return this.#unchecked.size === 0 && this.#slotsDue.size === 0 && this.#plantsDue.size === 0;
  }

  /** Checks the names of all, of which those of `due` may have changed; gives the files that changed. */
  #close(due: readonly string[]): ReadonlySet<string> {
    const changed = new Set(this.#changed);
    if (due.length > 0) this.#put(LOOK_ALIKES, this.#lookAlikes(due), changed);
    this.#changed.clear();
    return changed;
  }

  #follow(id: string, now: Moment): void {
    this.#unchecked.delete(id);
    this.#check(id, now, this.#changed);
    const lot = this.#journal.lot(id);
    for (const slot of this.#slots.follow(id, lot)) this.#slotsDue.add(slot);
    for (const plant of this.#plants.follow(id, lot)) this.#plantsDue.add(plant);
  }

  /** The problems of a file as they are shown, from top to bottom: records that miss one `day` line have one. */
  of(name: string): Found[] {
    return onceForEachRow(this.eachOf(name));
  }

  /**
   * The problems of each record of a file, from top to bottom. While some ids were never checked, only what its lines
   * and the file say by themselves: a part of the others would have wrong numbers.
   */
  eachOf(name: string): Found[] {
    const all: { readonly found: Found; readonly number: number }[] = [];
    // A line that went away since the last update is on no page after the next one.
    const note = (found: Found) => {
      if (found.line.block && found.line.store.name === name) all.push({ found, number: found.line.number });
    };
    const file = this.#journal.files.get(name);
    if (file) problemsOfFile(file, this.#now).forEach(note);
    for (const line of file?.faulty ?? []) {
      for (const problem of line.content.problems) note({ line, problem, related: [] });
    }
    const ids = this.isComplete ? this.#idsIn.get(name) : undefined;
    for (const id of ids ?? []) this.#pages.get(id)!.problems.forEach(note);
    return all
      .sort((a, b) => a.number - b.number || compareProblems(a.found, b.found))
      .map(({ found }) => found);
  }

  /**
   * Of a file without marks of a merge, and of which only the beginning is there, so many problems that there are
   * whatever follows, from top to bottom.
   */
  surelyIn(name: string, most: number): Found[] {
    const all: Found[] = [];
    for (const line of this.#journal.files.get(name)?.faulty ?? []) {
      if (all.length >= most) break;
      all.push(...line.content.problems.map(problem => ({ line, problem, related: [] })).sort(compareProblems));
    }
    return all.slice(0, most);
  }

  #due(touched: ReadonlySet<string>, definitions: boolean, later: boolean): ReadonlySet<string> {
    if (!definitions && !later) return touched;
    return new Set([...touched, ...(definitions ? this.#unknown : []), ...(later ? this.#running : [])]);
  }

  /** Names that look alike, after something changed in what is said of some ids. */
  #lookAlikes(due: readonly string[]): Found[] {
    if (this.#odd.size === 0) {
      this.#names = undefined;
      return [];
    }
    const ids = this.#names ? due : [...this.#journal.ids(), ...due, WHOLE_JOURNAL];
    this.#names ??= new NameIndex();
    for (const id of ids) {
      this.#names.follow(id, id === WHOLE_JOURNAL
        ? this.#journal.globalEntries('guide') : entriesAbout(id, this.#journal.mentionsOf(id)));
    }
    return lookAlikes(this.#names);
  }

  #check(id: string, now: Moment, changed: Set<string>): void {
    const problems = problemsOfId(id, { journal: this.#journal, now });
    this.#put(id, problems, changed);
    toggle(this.#unknown, id, problems.some(({ problem }) => offering.has(problem.code)));
    toggle(this.#odd, id, this.#journal.mentionsOf(id).some(isSpeltOddly));
    const batches = this.#journal.lot(id)?.batches.values() ?? [];
    toggle(this.#running, id, [...batches].some(({ soaks }) => soaks.some(({ end }) => !end || isBefore(now, end))));
  }

  #put(id: string, problems: readonly Found[], changed: Set<string>): void {
    const before = this.#pages.get(id);
    if (isSame(before?.problems ?? [], problems)) return;
    for (const file of before?.files ?? []) {
      changed.add(file);
      toggle(this.#idsIn.get(file)!, id, false);
    }
    for (const file of before?.related ?? []) toggle(this.#idsAbout.get(file)!, id, false);
    this.#pages.delete(id);
    if (problems.length === 0) return;
    const files = new Set(problems.map(({ line }) => line.store.name));
    const related = new Set(problems.flatMap(found => found.related.map(({ line }) => line.store.name)));
    this.#pages.set(id, { problems, files, related });
    for (const file of files) {
      changed.add(file);
      put(this.#idsIn, file, id);
    }
    for (const file of related) put(this.#idsAbout, file, id);
  }
}

function isSame(before: readonly Found[], now: readonly Found[]): boolean {
  return before.length === now.length && before.every(({ line, problem, related }, i) => {
    const other = now[i]!;
    return line === other.line && isSameProblem(problem, other.problem)
      && related.length === other.related.length && related.every((each, n) => each.line === other.related[n]!.line);
  });
}

/** Fixes are of the words that the message says. */
function isSameProblem(a: Problem, b: Problem): boolean {
  return a.code === b.code && a.start === b.start && a.end === b.end && a.message === b.message;
}

function compareProblems({ problem: a }: Found, { problem: b }: Found): number {
  return a.start - b.start || a.end - b.end || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}

/** Does the work for one after the other and strikes it off, until none is left or time is over. */
function takeUntil(isOver: () => boolean, due: Set<string>, work: (each: string) => void): void {
  for (const each of due) {
    due.delete(each);
    work(each);
    if (isOver()) return;
  }
}

function put(index: Map<string, Set<string>>, key: string, id: string): void {
  const ids = index.get(key);
  if (ids) ids.add(id);
  else index.set(key, new Set([id]));
}

function toggle(ids: Set<string>, id: string, is: boolean): void {
  if (is) ids.add(id);
  else ids.delete(id);
}
