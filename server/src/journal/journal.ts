/**
 * The journal of one folder: its files, and what they say together. An edit touches only the things that the old and
 * the new lines name (and what is made from these); everything derived is kept until it is touched.
 */
import type { Keyword } from '../model/keywords.ts';
import { factOf } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { agentsWith } from '../solutions/declared-agents.ts';
import type { Range } from '../text/line-store.ts';
import { dosesOf } from './doses.ts';
import { historyOf } from './history.ts';
import { compareLines, isDayLine, JournalFile, type JournalChange, type JournalLine } from './journal-file.ts';
import type { DatedEntry, Dose, Entry, Lot } from './life.ts';
import { Limits } from './limits.ts';
import { isGlobal, mentionsOf } from './mentions.ts';
import { isZone } from './moment.ts';
import type { LimitSettings } from './settings.ts';
import { drawnMl, solutionOf, type Draw, type Solution } from './solutions.ts';

/** Things whose facts may have changed; 'all' when something changed that holds for every one. */
export type Touched = ReadonlySet<string> | 'all';

export class Journal {
  readonly #files = new Map<string, JournalFile>();
  readonly #mentions = new Map<string, Set<JournalLine>>();
  readonly #definitions = new Map<string, Set<JournalLine>>();
  /** The records that mean something for the whole journal. */
  readonly #global = new Set<JournalLine>();
  readonly #lots = new Map<string, Lot | undefined>();
  readonly #solutions = new Map<string, Solution | undefined>();
  #shared: { agents: ReadonlyMap<string, Agent>; zone: string | undefined; limits: Limits } | undefined;
  #settings: LimitSettings = {};
  #touched: Set<string> | 'all' = new Set();
  #revision = 0;

  /** Grows with every change; what was read at one revision holds until the next. */
  get revision(): number {
    return this.#revision;
  }

  get files(): ReadonlyMap<string, JournalFile> {
    return this.#files;
  }

  /** Takes a file in, or takes over its new text; lines that stay the same keep their identity. */
  set(name: string, text: string): void {
    const file = this.#files.get(name);
    if (file) return this.#follow(file, file.reset(text));
    const fresh = new JournalFile(name, text);
    this.#files.set(name, fresh);
    this.#follow(fresh, { at: 0, removed: [], added: [...fresh.text] });
  }

  /** Follows an edit of a file's text. Throws a RangeError on a file that the journal does not have. */
  edit(name: string, range: Range, text: string): void {
    const file = this.#files.get(name);
    if (!file) throw new RangeError(`no file ${name} in this journal`);
    this.#follow(file, file.edit(range, text));
  }

  remove(name: string): void {
    const file = this.#files.get(name);
    if (!file) return;
    const removed = [...file.text];
    this.#files.delete(name);
    this.#follow(file, { at: 0, removed, added: [] });
  }

  set settings(settings: LimitSettings) {
    this.#settings = settings;
    this.#touchAll();
  }

  /** The things touched since this was asked last. */
  takeTouched(): Touched {
    const touched = this.#touched;
    this.#touched = new Set();
    return touched;
  }

  /** Every id that some record defines or names. */
  ids(): Iterable<string> {
    return this.#mentions.keys();
  }

  /** The ids that some record defines. */
  definedIds(): Iterable<string> {
    return this.#definitions.keys();
  }

  /** The records that define an id, in the order of the journal. Usually one. */
  definitionsOf(id: string): Entry[] {
    return this.#entries(this.#definitions.get(id));
  }

  /** All records that name an id, definitions included, in the order of the journal. */
  mentionsOf(id: string): Entry[] {
    return this.#entries(this.#mentions.get(id));
  }

  /** The keyword that defines an id first; undefined where nothing does. */
  kindOf(id: string): Keyword | undefined {
    return this.definitionsOf(id)[0]?.record.keyword;
  }

  /** The life of a lot; undefined where no `lot` record defines it. */
  lot(id: string): Lot | undefined {
    if (!this.#lots.has(id)) this.#lots.set(id, this.#readLot(id));
    return this.#lots.get(id);
  }

  *lots(): IterableIterator<Lot> {
    for (const id of this.#definitions.keys()) {
      const lot = this.lot(id);
      if (lot) yield lot;
    }
  }

  /** A stock or a dilution. A circle of dilutions ends at the one asked first, whose source is then not known. */
  solution(id: string): Solution | undefined {
    if (this.#solutions.has(id)) return this.#solutions.get(id);
    this.#solutions.set(id, undefined);
    const entry = this.definitionsOf(id).find(({ record }) => record.keyword === 'stock' || record.keyword === 'dilute');
    const solution = entry && solutionOf(id, entry, this.agents, other => this.solution(other), this.limits.stock.value);
    this.#solutions.set(id, solution);
    return solution;
  }

  *solutions(): IterableIterator<Solution> {
    for (const id of this.#definitions.keys()) {
      const solution = this.solution(id);
      if (solution) yield solution;
    }
  }

  /** Everything taken from a stock. */
  drawsFrom(id: string): Draw[] {
    return this.mentionsOf(id)
      .filter(({ record }) => record.keyword === 'soak' || record.keyword === 'apply' || record.keyword === 'dilute')
      .filter(({ record }) => mentionsOf(record).some(mention => mention.id === id && mention.role === 'reference'))
      .map(entry => ({ entry, ml: drawnMl(entry, id) }));
  }

  dosesOf(entry: Pick<Entry, 'record'>): Dose[] {
    return dosesOf(entry, { agents: this.agents, solution: id => this.solution(id) });
  }

  get agents(): ReadonlyMap<string, Agent> {
    return this.#common().agents;
  }

  /** The zone of the journal's clock; undefined where none is named or the name is no zone. */
  get zone(): string | undefined {
    return this.#common().zone;
  }

  get limits(): Limits {
    return this.#common().limits;
  }

  /** The records of a keyword that hold for the whole journal: `limit`, `zone`, `agent`, `guide`. */
  globalEntries(keyword: Keyword): Entry[] {
    return this.#entries(this.#global).filter(({ record }) => record.keyword === keyword);
  }

  /** A record in its place; undefined for a line that holds none. */
  entryAt(line: JournalLine): Entry | undefined {
    const { record } = line.content;
    if (!record) return undefined;
    const day = record.date?.day ?? this.#files.get(line.store.name)?.dayAbove(line);
    return { line, record, moment: day === undefined ? undefined : { day, minutes: record.time?.minutes } };
  }

  #entries(lines: ReadonlySet<JournalLine> | undefined): Entry[] {
    if (!lines) return [];
    return [...lines].sort(compareLines).map(line => this.entryAt(line)!);
  }

  #common() {
    if (this.#shared) return this.#shared;
    const declared = this.globalEntries('agent').flatMap(({ record }) =>
      record.subject
        ? [{
            word: record.subject.text, molarMass: factOf(record, 'molarMass')?.value.value,
            solubility: factOf(record, 'solubility')?.value, text: factOf(record, 'text')?.value.text,
          }]
        : []);
    const zone = this.globalEntries('zone').map(({ record }) => record.subject?.text).find(name => name !== undefined && isZone(name));
    const limits = new Limits(this.globalEntries('limit').map(({ line }) => line), this.#settings);
    this.#shared = { agents: agentsWith(declared), zone, limits };
    return this.#shared;
  }

  #readLot(id: string): Lot | undefined {
    const definition = this.definitionsOf(id).find(({ record }) => record.keyword === 'lot');
    if (!definition) return undefined;
    const entries = this.mentionsOf(id).filter(({ record }) =>
      record.keyword !== 'lot' && record.subject !== undefined && mentionsOf(record)[0]?.id === id && mentionsOf(record)[0]?.role === 'subject');
    return historyOf(id, definition, entries, { zone: this.zone, dose: (entry: DatedEntry) => this.dosesOf(entry) });
  }

  #follow(file: JournalFile, { at, removed, added }: JournalChange): void {
    this.#revision++;
    for (const line of removed) this.#forget(line);
    for (const line of added) this.#learn(line);
    // Undated records below the window have another date when a `day` line in it came, went or changed.
    if (this.#touched === 'all' || !(removed.some(isDayLine) || added.some(isDayLine)) || !this.#files.has(file.name)) return;
    for (const line of file.linesToNextDay(at + added.length)) {
      if (line.content.record && !line.content.record.date) this.#touchLine(line);
    }
  }

  #learn(line: JournalLine): void {
    const { record } = line.content;
    if (!record) return;
    for (const { id, role } of mentionsOf(record)) {
      put(this.#mentions, id, line);
      if (role === 'definition') put(this.#definitions, id, line);
    }
    if (isGlobal(record.keyword)) this.#global.add(line);
    this.#touchLine(line);
  }

  #forget(line: JournalLine): void {
    const { record } = line.content;
    if (!record) return;
    this.#touchLine(line);
    for (const { id } of mentionsOf(record)) {
      take(this.#mentions, id, line);
      take(this.#definitions, id, line);
    }
    this.#global.delete(line);
  }

  #touchLine(line: JournalLine): void {
    const { record } = line.content;
    if (!record) return;
    if (isGlobal(record.keyword)) return this.#touchAll();
    for (const { id, role } of mentionsOf(record)) {
      this.#touch(id);
      if (role === 'definition' && record.keyword !== 'lot') this.#touchUsers(id, new Set());
    }
  }

  /** Everything that is made from a stock or laid out by a regime changes with it. */
  #touchUsers(id: string, seen: Set<string>): void {
    if (seen.has(id)) return;
    seen.add(id);
    for (const line of this.#mentions.get(id) ?? []) {
      const [subject] = line.content.record ? mentionsOf(line.content.record) : [];
      if (!subject || subject.id === id) continue;
      this.#touch(subject.id);
      if (subject.role === 'definition') this.#touchUsers(subject.id, seen);
    }
  }

  #touch(id: string): void {
    this.#lots.delete(id);
    this.#solutions.delete(id);
    if (this.#touched !== 'all') this.#touched.add(id);
  }

  #touchAll(): void {
    this.#revision++;
    this.#lots.clear();
    this.#solutions.clear();
    this.#shared = undefined;
    this.#touched = 'all';
  }
}

function put(index: Map<string, Set<JournalLine>>, id: string, line: JournalLine): void {
  const lines = index.get(id);
  if (lines) lines.add(line);
  else index.set(id, new Set([line]));
}

function take(index: Map<string, Set<JournalLine>>, id: string, line: JournalLine): void {
  const lines = index.get(id);
  lines?.delete(line);
  if (lines?.size === 0) index.delete(id);
}
