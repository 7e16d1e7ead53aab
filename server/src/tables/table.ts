/** Tables for other programs: columns with a name, a unit in it, a type and a meaning; a row for each thing. */
import type { Journal } from '../journal/journal.ts';
import { printTime, type Moment } from '../journal/moment.ts';
import { isoOf, type Day } from '../model/day.ts';
import type { SeedRange } from '../model/estimate.ts';

/** What one table is read from. */
export interface Source {
  /** Tells the rows of this journal from those of others. */
  readonly name: string;
  readonly journal: Journal;
  /** The files whose records are told. */
  readonly files: readonly string[];
  readonly now: Moment;
}

/** `null` is what is not known. */
export type Cell = string | number | boolean | null;

export type Row = readonly Cell[];

export type CellType = 'string' | 'integer' | 'number' | 'boolean' | 'date' | 'time';

export interface Field {
  /** With the unit in it: `duration_h_least`. */
  readonly name: string;
  readonly type: CellType;
  /** One sentence. */
  readonly says: string;
  /** All that a text can be, where these are few. */
  readonly words?: readonly string[];
}

/** Columns whose values are found in those of another table. */
export interface Reference {
  readonly columns: readonly string[];
  readonly table: string;
}

export interface Table {
  readonly name: string;
  readonly says: string;
  /** What tells a row from all others; never null. */
  readonly key: readonly string[];
  readonly references: readonly Reference[];
  readonly fields: readonly Field[];
  /** In the order of the journal. */
  readonly rowsOf: (source: Source) => Row[];
}

/** A column of the things that a table has a row for. */
export interface Column<Of> extends Field {
  readonly cell: (of: Of) => Cell | undefined;
}

/** A table whose first column names the journal. */
export function table<Of>(
  about: Pick<Table, 'name' | 'says' | 'key'> & { readonly references?: readonly Reference[] },
  columns: readonly Column<Of>[],
  all: (source: Source) => Iterable<Of>,
): Table {
  const journal: Field = { name: 'journal', type: 'string', says: 'The journal.' };
  return {
    references: [], ...about, key: ['journal', ...about.key],
    fields: [journal, ...columns.map(({ cell: _, ...field }) => field)],
    rowsOf: source => Array.from(all(source), of => [source.name, ...columns.map(({ cell }) => cell(of) ?? null)]),
  };
}

type Of<Thing, Value> = (of: Thing) => Value | undefined;

export function text<Thing>(name: string, says: string, cell: Of<Thing, string>): Column<Thing> {
  return { name, type: 'string', says, cell };
}

/** One of a few words. */
export function word<Thing>(
  name: string, says: string, words: readonly string[], cell: Of<Thing, string>,
): Column<Thing> {
  return { name, type: 'string', says, words, cell };
}

export function whole<Thing>(name: string, says: string, cell: Of<Thing, number>): Column<Thing> {
  return { name, type: 'integer', says, cell };
}

export function number<Thing>(name: string, says: string, cell: Of<Thing, number>): Column<Thing> {
  return { name, type: 'number', says, cell };
}

export function yes<Thing>(name: string, says: string, cell: Of<Thing, boolean>): Column<Thing> {
  return { name, type: 'boolean', says, cell };
}

/** Written as 2026-01-10. */
export function date<Thing>(name: string, says: string, day: Of<Thing, Day>): Column<Thing> {
  return { name, type: 'date', says, cell: of => map(day(of), isoOf) };
}

/** Minutes since midnight by the clock of the journal, written as 19:00:00. */
export function time<Thing>(name: string, says: string, minutes: Of<Thing, number>): Column<Thing> {
  return { name, type: 'time', says, cell: of => map(minutes(of), at => `${printTime(at)}:00`) };
}

/** The number where it was counted, and the limits that an estimate leaves; of what was counted both are the number. */
export function seeds<Thing>(name: string, what: string, range: Of<Thing, SeedRange>): Column<Thing>[] {
  const counted = (of: Thing) => {
    const { least, most } = range(of) ?? { least: 0, most: -1 };
    return least === most ? least : undefined;
  };
  return [
    whole(name, `${what}, if they were counted.`, counted),
    whole(`${name}_least`, `${what}, at least.`, of => range(of)?.least),
    whole(`${name}_most`, `${what}, at most.`, of => range(of)?.most),
  ];
}

interface Limits {
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

/** A number that is known within limits only. */
export function between<Thing>(name: string, what: string, limits: Of<Thing, Limits>): Column<Thing>[] {
  return [
    number(`${name}_least`, `${what}, at least.`, of => limits(of)?.least),
    number(`${name}_most`, `${what}, at most.`, of => limits(of)?.most),
  ];
}

export function map<From, To>(value: From | undefined, to: (value: From) => To): To | undefined {
  return value === undefined ? undefined : to(value);
}
