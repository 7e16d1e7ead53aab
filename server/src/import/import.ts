/** A sheet and the journal as it is, to the journal as it would be; or to what must be asked first. */
import { Journal } from '../journal/journal.ts';
import { composed, type Composed, type Told } from './compose.ts';
import { guessMapping } from './guess.ts';
import { sifted, type Files } from './known.ts';
import { layoutOf, type Layout } from './layout.ts';
import type { Answers } from './answers.ts';
import type { Mapping } from './mapping.ts';
import { recordLines, withRecords } from './place.ts';
import { questionsOf, type Question } from './questions.ts';
import { ordersOf, RowReader } from './row-reader.ts';
import type { Table, TableRow } from './table.ts';

export interface ImportRequest {
  /** The name of the sheet, for the comment above its records. */
  readonly name: string;
  readonly table: Table;
  /** As it was saved; what the grower says now goes over it. */
  readonly mapping: Mapping | undefined;
  readonly answers: Answers;
  /** All files of the journal; the one that takes the records may be new. */
  readonly files: Files;
  readonly target: string;
}

export interface RowCounts {
  /** Rows of which something is new. */
  readonly imported: readonly number[];
  /** Rows that the journal has already. */
  readonly known: readonly number[];
  readonly empty: readonly number[];
  /** Rows of headings, and above them. */
  readonly head: readonly number[];
}

export interface Imported {
  readonly mapping: Mapping;
  /** While there are any, nothing is imported. */
  readonly questions: readonly Question[];
  /** The file with the records; as it was where nothing is new. */
  readonly after: string;
  readonly records: number;
  readonly rows: RowCounts;
  /** Rows that became no record, in order; with those above the headings that are no headings. */
  readonly left: readonly Told[];
  /** What else there is to say of rows. */
  readonly told: readonly Told[];
}

/** Gives the reason where the sheet has no headings that are known. */
export function importTable(request: ImportRequest): Imported | { readonly fault: string } {
  const { table, files, target, name, answers } = request;
  const known: Partial<Mapping> = { ...request.mapping, ...answers };
  const layout = layoutOf(table, request.mapping?.headingRow);
  if (!layout) {
    return { fault: 'no row has headings that Plumule knows, such as “Plant”, “Seeds”, “Sown” or “Germinated”; write some above the columns' };
  }
  const { mapping, asks } = guessMapping(table, layout, known);
  const journal = new Journal();
  for (const [file, text] of files) journal.set(file, text);
  const orders = ordersOf(mapping, layout.body);
  const readers: RowReader[] = [];
  for (const row of layout.body) readers.push(new RowReader(row, mapping, orders, readers.at(-1)));
  const filled = readers.filter(reader => !reader.isEmpty);
  const all = composed(filled, journal);
  const questions = questionsOf(mapping, asks, filled.flatMap(({ asked }) => asked), all.counting);
  const before = files.get(target) ?? '';
  const { drafts, parts, known: same, told } = sifted(all, files);
  const isAsking = questions.length > 0;
  const lines = isAsking ? [] : recordLines(drafts, parts);
  return {
    mapping, questions, after: withRecords(before, lines, `From ${name}`),
    records: lines.filter(line => line !== '' && !line.startsWith(' ')).length,
    rows: rowCounts(all, same, readers, layout),
    left: inRowOrder([...layout.titles.map(titleTold), ...all.left]), told: inRowOrder([...all.told, ...told]),
  };
}

function titleTold({ number, cells }: TableRow): Told {
  return { row: number, why: `it stands above the headings: “${cells.filter(cell => cell !== '').join(', ')}”` };
}

function inRowOrder(all: readonly Told[]): Told[] {
  return all.toSorted((a, b) => a.row - b.row);
}

function rowCounts(
  { rows }: Composed, known: ReadonlySet<number>, readers: readonly RowReader[], { head, titles }: Layout,
): RowCounts {
  return {
    imported: [...rows].filter(row => !known.has(row)), known: [...known],
    empty: readers.filter(({ isEmpty }) => isEmpty).map(({ number }) => number),
    head: head.filter(row => !titles.includes(row)).map(({ number }) => number),
  };
}
