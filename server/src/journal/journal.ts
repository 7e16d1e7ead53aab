/**
 * The journal of one folder: its files, and what they say together. An edit touches only the things that the old and
 * the new lines name (and what is made from these); everything derived is kept until it is touched.
 */
import type { Day } from '../model/day.ts';
import type { Keyword } from '../model/keywords.ts';
import type { Agent } from '../solutions/agent.ts';
import { Repeats } from '../syntax/repeats.ts';
import type { Range } from '../text/line-store.ts';
import { commonOf, isOtherZone, redefinesAgent, type Common } from './common.ts';
import { dependentsOf, halvedIn, lotsJudgedBy, replacedWith } from './dependents.ts';
import { doubtsAbout, forEachDoubted } from './doubts.ts';
import { dosesOf, shelfOf } from './doses.ts';
import { accountedBy, isDraw, takenBy, type AccountEntry, type Draw } from './draws.ts';
import type { Guides } from './guides.ts';
import { historyOf } from './history.ts';
import { inJournalOrder, isDayLine, JournalFile, type JournalChange, type JournalLine } from './journal-file.ts';
import type { Dose, Entry, Lot } from './life.ts';
import type { Limits } from './limits.ts';
import { forEachMention, isEventOf, isGlobalLine } from './mentions.ts';
import { NameIndex } from './name-index.ts';
import type { LimitSettings } from './settings.ts';
import { solutionChain } from './solution-chain.ts';
import { isSolution, takesFrom, tellsWhatIsLeft, type Solution } from './solutions.ts';
import { TouchLog, type Touched } from './touched.ts';

export class Journal {
  readonly #files = new Map<string, JournalFile>();
  readonly #names = new NameIndex();
  readonly #repeats = new Repeats();
  /** The records that mean something for the whole journal. */
  readonly #global = new Set<JournalLine>();
  readonly #entries = new Map<string, readonly Entry[]>();
  readonly #lots = new Map<string, Lot | undefined>();
  readonly #solutions = new Map<string, Solution | undefined>();
  #settings: LimitSettings = {};
  #common: Common = commonOf([], {});
  readonly #touches = new TouchLog();
  #revision = 0;
  readonly until: Day;

  /** With a day, it is the journal as it stood in the evening of that day: what is dated later does not count. */
  constructor(until: Day = Infinity) {
    this.until = until;
  }

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
    const fresh = new JournalFile(name, text, line => this.#repeats.read(line));
    this.#files.set(name, fresh);
    this.#follow(fresh, { at: 0, removed: [], added: fresh.counted(), isRenumbered: true });
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
    this.#files.delete(name);
    this.#follow(file, { at: 0, removed: file.counted(), added: [], isRenumbered: true });
  }

  set settings(settings: LimitSettings) {
    this.#settings = settings;
    this.#revision++;
    this.#common = commonOf(this.#global, settings);
    this.#touchEverything();
  }

  /** To keep up with the journal: each call tells what was touched since the one before; to the first all is new. */
  follow(): () => Touched {
    return this.#touches.follow(this.#files.keys());
  }

  /** Every id that some record defines or names. */
  ids(): Iterable<string> {
    return this.#names.ids();
  }

  /** The ids that some record defines, in the order of their first definitions. */
  definedIds(): readonly string[] {
    return this.#names.definedIds();
  }

  /** The records that define an id, in the order of the journal. Usually one. */
  definitionsOf(id: string): Entry[] {
    return this.#placed(this.#names.definitions(id));
  }

  /** All records that name an id, definitions included, in the order of the journal. */
  mentionsOf(id: string): readonly Entry[] {
    let entries = this.#entries.get(id);
    if (!entries) this.#entries.set(id, entries = this.#placed(this.#names.mentions(id)));
    return entries;
  }

  /** The keyword that defines an id first; undefined where nothing does. */
  kindOf(id: string): Keyword | undefined {
    return inJournalOrder(this.#names.definitions(id))[0]?.content.record?.keyword;
  }

  /** The life of a lot; undefined where no `lot` record defines it. */
  lot(id: string): Lot | undefined {
    if (!this.#lots.has(id)) this.#lots.set(id, this.#readLot(id));
    return this.#lots.get(id);
  }

  /** All lots, in the order of their definitions. */
  *lots(): IterableIterator<Lot> {
    for (const id of this.definedIds()) {
      const lot = this.lot(id);
      if (lot) yield lot;
    }
  }

  /** A stock or a dilution. */
  solution(id: string): Solution | undefined {
    if (!this.#solutions.has(id)) this.#readSolutions(id);
    return this.#solutions.get(id);
  }

  /** All stocks and dilutions, in the order of their definitions. */
  *solutions(): IterableIterator<Solution> {
    for (const id of this.definedIds()) {
      const solution = this.solution(id);
      if (solution) yield solution;
    }
  }

  /** Everything taken from a stock or a packet. */
  drawsFrom(id: string): Draw[] {
    return this.accountOf(id).filter(isDraw);
  }

  /** The same, with what was found to be left of it now and then. */
  accountOf(id: string): AccountEntry[] {
    const solution = this.solution(id);
    return solution ? this.#accountOf(solution) : [];
  }

  #accountOf(solution: Solution): AccountEntry[] {
    const { id } = solution;
    const entries = this.mentionsOf(id).filter(({ record }) => takesFrom(record, id) || tellsWhatIsLeft(record, id));
    return entries.flatMap(entry => accountedBy(entry, solution, shelfOf(this)) ?? []);
  }

  dosesOf(entry: Pick<Entry, 'record'> & Partial<Entry>): Dose[] {
    return dosesOf(entry, shelfOf(this));
  }

  get agents(): ReadonlyMap<string, Agent> {
    return this.#common.agents;
  }

  /** The zone of the journal's clock; undefined where none is named or the name is no zone. */
  get zone(): string | undefined {
    return this.#common.zone;
  }

  get limits(): Limits {
    return this.#common.limits;
  }

  get guides(): Guides {
    return this.#common.guides;
  }

  /** The records of a keyword that hold for the whole journal: `limit`, `zone`, `agent`, `guide`. */
  globalEntries(keyword: Keyword): Entry[] {
    return this.#common.lines(keyword).map(line => this.entryAt(line)!);
  }

  /** A record in its place; undefined for a line that holds none. */
  entryAt(line: JournalLine): Entry | undefined {
    const { record } = line.content;
    if (!record) return undefined;
    const day = this.#files.get(line.store.name)?.dayOf(line);
    return { line, record, moment: day === undefined ? undefined : { day, minutes: record.time?.minutes } };
  }

  #placed(lines: Iterable<JournalLine>): Entry[] {
    const entries = inJournalOrder(lines).map(line => this.entryAt(line)!);
    if (this.until === Infinity) return entries;
    return entries.filter(({ moment }) => !moment || moment.day <= this.until);
  }

  #readLot(id: string): Lot | undefined {
    const definition = this.definitionsOf(id).find(({ record }) => record.keyword === 'lot');
    if (!definition) return undefined;
    const entries = this.mentionsOf(id).filter(({ record }) => isEventOf(record, id));
    return historyOf(id, definition, entries, {
      zone: this.zone, doubts: doubtsAbout(id, this.#names), dosesOf: entry => this.dosesOf(entry),
      regimeOf: name => this.definitionsOf(name).find(({ record }) => record.keyword === 'regime'),
    });
  }

  /** Reads a solution together with those that it is made from. */
  #readSolutions(id: string): void {
    const definitionsOf = (of: string) => this.definitionsOf(of).filter(({ record }) => isSolution(record.keyword));
    const taken = (entry: Entry, packet: Solution) => takenBy(entry, packet, this.#accountOf(packet));
    const { agents, limits } = this;
    for (const [made, solution] of solutionChain(id, definitionsOf, this.#solutions, agents, limits.stock, taken)) {
      this.#solutions.set(made, solution);
    }
  }

  #follow(file: JournalFile, { at, removed, added, isRenumbered }: JournalChange): void {
    this.#revision++;
    this.#touches.file(file.name, isRenumbered);
    this.#touchTogether(removed);
    for (const line of removed) this.#forget(line);
    for (const line of added) this.#learn(line);
    this.#touchTogether(added);
    // Undated records below the window have another date when a `day` line in it came, went or changed.
    if (this.#files.has(file.name) && (removed.some(isDayLine) || added.some(isDayLine))) {
      const lines = [...file.linesToNextDay(at + added.length)];
      const below = lines.filter(({ content: { record } }) => record && !record.date);
      for (const line of below) this.#touchLine(line);
      this.#touchTogether(below);
    }
    const global = [...removed, ...added].filter(isGlobalLine);
    if (global.length > 0) this.#followGlobal(global);
  }

  #learn(line: JournalLine): void {
    this.#names.add(line);
    if (isGlobalLine(line)) this.#global.add(line);
    this.#touchLine(line);
  }

  #forget(line: JournalLine): void {
    this.#touchLine(line);
    this.#names.delete(line);
    this.#global.delete(line);
  }

  /** Lines came or went that mean something for the whole journal. */
  #followGlobal(lines: readonly JournalLine[]): void {
    const before = this.#common;
    this.#common = commonOf(this.#global, this.#settings);
    this.#touches.flag('common');
    const keywords = new Set(lines.map(({ content }) => content.record?.keyword));
    if (isOtherZone(before, this.#common) || lines.some(redefinesAgent) || keywords.has('limit')) this.#touchEverything();
    else if (keywords.has('guide')) for (const id of lotsJudgedBy(lines, this.#names)) this.#touches.id(id);
  }

  #touchLine(line: JournalLine): void {
    forEachDoubted(line, this.#names, id => this.#touch(id));
    const { content: { record } } = line;
    if (!record) return;
    forEachMention(record, (id, role) => {
      this.#touch(id);
      if (role !== 'definition') return;
      this.#touches.flag('definitions');
      if (record.keyword !== 'lot') this.#touchDependents(id); // Lots: see #touchTogether.
    });
  }

  #touchDependents(id: string): void {
    const { defined, users } = dependentsOf(id, this.#names);
    for (const each of defined) this.#solutions.delete(each);
    for (const each of users) this.#touch(each);
  }

  /** For all lines of a change at once: each of a long row would touch all that are older. */
  #touchTogether(lines: readonly JournalLine[]): void {
    for (const id of replacedWith(lines, this.#names)) this.#touch(id);
    for (const id of halvedIn(lines, this.#names)) this.#touchDependents(id);
  }

  #touch(id: string): void {
    this.#entries.delete(id);
    this.#lots.delete(id);
    this.#touches.id(id);
  }

  /** Limits judge what lots say; of solutions they say how long they keep, and so how sure a dose from them is. */
  #touchEverything(): void {
    this.#lots.clear();
    this.#solutions.clear();
    this.#touches.flag('all');
  }
}
