/** From the rows of a sheet to records that a journal could hold. */
import type { Journal } from '../journal/journal.ts';
import type { Keyword } from '../model/keywords.ts';
import { factOf } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';
import { countingShown } from './counting.ts';
import { countedIn, eventsOf, isPlainRemark } from './events.ts';
import { lotLine } from './lots.ts';
import type { Counting } from './answers.ts';
import { howMany } from './numbers.ts';
import type { RowReader } from './row-reader.ts';
import { subjectsOf, type Assigned } from './subjects.ts';

/** A record that rows give, with the remarks under it. */
export interface Draft {
  readonly row: number;
  readonly keyword: Keyword;
  /** The lot or the batch; of a `split` the one that is divided. */
  readonly subject: string;
  readonly line: string;
  readonly remarks: string[];
}

/** A part of a `split`; those of one parent become one record. */
export interface PartDraft {
  readonly row: number;
  readonly parent: string;
  readonly name: string;
  /** As in a `split`: `A 24 seeds`. */
  readonly fact: string;
  readonly remarks: string[];
}

/** A cell that became a remark and might have been more, or a row that stays out. */
export interface Told {
  readonly row: number;
  readonly why: string;
}

export interface Composed {
  /** In the order of the rows; what defines a lot before what happens to it. */
  readonly drafts: readonly Draft[];
  readonly parts: readonly PartDraft[];
  readonly left: readonly Told[];
  readonly told: readonly Told[];
  /** The rows behind drafts and parts. */
  readonly rows: ReadonlySet<number>;
  /** Undefined where the grower must say it. */
  readonly counting: Counting | undefined;
}

export function composed(readers: readonly RowReader[], journal: Journal): Composed {
  const subjects = subjectsOf(readers, journal);
  const counting = readers[0]?.mapping.counts ?? shownCounting(subjects, journal);
  const composer = new Composer(journal, counting ?? 'new', definedIn(subjects));
  for (const [row, subject] of [...subjects].sort(([a], [b]) => a.number - b.number)) composer.add(row, subject);
  return { ...composer.result(), counting };
}

function pathOf(subject: Assigned): string | undefined {
  if ('left' in subject) return undefined;
  return subject.part === undefined ? subject.lot : `${subject.lot}/${subject.part}`;
}

/** The lots and batches that some row defines, be it below the rows about them. */
function definedIn(subjects: ReadonlyMap<RowReader, Assigned>): Set<string> {
  const defined = new Set<string>();
  for (const [row, subject] of subjects) {
    if (!('left' in subject) && subject.part !== undefined && seedsOf(row) !== undefined) defined.add(pathOf(subject)!);
  }
  for (const [row, subject] of subjects) {
    // A row about a batch that nothing defines stays out, with what it says of its lot.
    if ('left' in subject || (subject.part !== undefined && !defined.has(pathOf(subject)!))) continue;
    if (lotLine(subject.lot, row.again(), subject.part !== undefined).line !== undefined) defined.add(subject.lot);
  }
  return defined;
}

/** How many seeds the row says are in its part of a lot. */
function seedsOf(row: RowReader): string | undefined {
  return howMany((row.cell('seeds') ?? row.cell('seeds sown'))?.text ?? '');
}

function shownCounting(subjects: ReadonlyMap<RowReader, Assigned>, journal: Journal): Counting | undefined {
  const seeds = new Map<string, number>();
  const all = [...subjects].flatMap(([row, subject]) => {
    const path = pathOf(subject);
    if (path === undefined) return [];
    const many = howMany(row.cell('seeds sown')?.text ?? row.cell('seeds')?.text ?? '');
    if (many !== undefined && /^\d+$/.test(many)) seeds.set(path, Number(many));
    return countedIn(row, path);
  });
  return countingShown(all, {
    seedsOf: path => seeds.get(path),
    hasOthers: (path, day) => journal.mentionsOf(path.split('/')[0]!).some(({ record, moment }) =>
      record.keyword === 'count' && record.subject?.text === path && moment !== undefined && moment.day !== day),
  });
}

class Composer {
  readonly #drafts: Draft[] = [];
  readonly #parts: PartDraft[] = [];
  readonly #left: Told[] = [];
  readonly #told: Told[] = [];
  readonly #rows = new Set<number>();
  /** What the sheet says of each lot, from its first row. */
  readonly #lots = new Map<string, Draft>();
  readonly #partOf = new Map<string, PartDraft>();
  /** The cells of each row. */
  readonly #seen = new Map<string, number>();

  constructor(readonly journal: Journal, readonly counting: Counting, readonly defined: ReadonlySet<string>) {}

  result(): Omit<Composed, 'counting'> {
    return { drafts: this.#drafts, parts: this.#parts, left: this.#left, told: this.#told, rows: this.#rows };
  }

  add(row: RowReader, subject: Assigned): void {
    if ('left' in subject) {
      this.#leave(row, subject.left);
      return;
    }
    const path = pathOf(subject)!;
    const twin = this.#twinOf(row);
    if (twin !== undefined) {
      this.#leave(row, `it says the same as row ${twin}`);
      return;
    }
    const lot = this.#lotOf(row, subject.lot, subject.part !== undefined);
    const batches = this.journal.lot(subject.lot)?.batches;
    if (subject.part !== undefined && !this.defined.has(path) && !batches?.has(path)) {
      this.#leave(row, `the journal has no batch ${path}, and the sheet does not say how many seeds are in it`);
      return;
    }
    if (!this.journal.lot(subject.lot) && !this.defined.has(subject.lot)) {
      this.#leave(row, `the journal has no lot ${subject.lot}, and the sheet names no plant for it`);
      return;
    }
    const part = subject.part === undefined ? undefined : this.#partIn(row, subject.lot, subject.part);
    const isStock = (id: string) => this.journal.solution(id) !== undefined;
    const events = eventsOf({ row, path, counting: this.counting, isStock }).map(({ keyword, line }): Draft =>
      ({ row: row.number, keyword, subject: path, line, remarks: [] }));
    const rest = row.rest();
    const remarks = rest.flatMap(({ column: { heading }, text }) =>
      remarkLines(isPlainRemark(heading) ? text : `${heading}: ${text}`));
    const dated = row.has('date') ? events.find(({ keyword }) => keyword === 'count') : undefined;
    const anchor = dated ?? lot ?? part ?? events[0];
    if (!anchor) {
      this.#leave(row, rest.find(({ why }) => why !== undefined)?.why ?? 'it says nothing that a record could hold');
      return;
    }
    if (lot) this.#defineLot(lot);
    if (part) this.#definePart(path, part);
    // Under a record of several rows a remark says which part it is about.
    const about = subject.part !== undefined && !events.some(event => event === anchor) ? `${subject.part}: ` : '';
    anchor.remarks.push(...remarks.map(text => about + text));
    this.#drafts.push(...events);
    this.#rows.add(row.number);
    for (const { column, text, why } of rest) {
      if (why !== undefined) this.#told.push({ row: row.number, why: `“${column.heading}: ${text}” is kept as a remark: ${why}` });
    }
  }

  #leave(row: RowReader, why: string): void {
    this.#left.push({ row: row.number, why });
  }

  /** The lot of the row's first mention; later rows only add what they say otherwise, as remarks. */
  #lotOf(row: RowReader, id: string, isPart: boolean): Draft | undefined {
    const { line, columns } = lotLine(id, row, isPart);
    const first = this.#lots.get(id);
    if (line === undefined) return undefined;
    if (first === undefined) {
      row.take(columns);
      return { row: row.number, keyword: 'lot', subject: id, line, remarks: [] };
    }
    if (first.line === line || saysNoMore(line, first.line)) row.take(columns);
    return undefined;
  }

  #defineLot(lot: Draft): void {
    this.#lots.set(lot.subject, lot);
    this.#drafts.push(lot);
  }

  #partIn(row: RowReader, lot: string, name: string): PartDraft | undefined {
    const many = seedsOf(row);
    if (many === undefined) return undefined;
    const cell = row.cell('seeds') ?? row.cell('seeds sown');
    const fact = `${name} ${many} seeds`;
    const known = this.#partOf.get(`${lot}/${name}`);
    if (known && known.fact !== fact) return undefined;
    if (row.cell('seeds') === cell || !row.cell('sown')) row.take([cell!.column]);
    return known ? undefined : { row: row.number, parent: lot, name, fact, remarks: [] };
  }

  #definePart(path: string, part: PartDraft): void {
    this.#partOf.set(path, part);
    this.#parts.push(part);
  }

  /** Of two rows with the same cells the second one is a slip, unless each is a packet of its own. */
  #twinOf(row: RowReader): number | undefined {
    const key = JSON.stringify(row.row.cells);
    const twin = this.#seen.get(key);
    if (twin === undefined) this.#seen.set(key, row.number);
    return row.has('lot') || row.mapping.lots === 'plant' ? twin : undefined;
  }
}

/** Whether all that a `lot` says stands in another one of the same id. */
function saysNoMore(line: string, other: string): boolean {
  const [one, two] = [parse(line).record!, parse(other).record!];
  if (one.plant?.text !== two.plant?.text) return false;
  return one.facts.every(fact => {
    const same = factOf(two, fact.type);
    return same !== undefined && line.slice(fact.start, fact.end) === other.slice(same.start, same.end);
  });
}

/** A text as remarks, a line each. */
function remarkLines(text: string): string[] {
  return text.split('\n').map(line => line.trim()).filter(line => line !== '');
}
