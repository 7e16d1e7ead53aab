/** A text of cells, as a spreadsheet writes it. */
import Papa from 'papaparse';
import { delimiters, type Delimiter } from './answers.ts';
import { headingsOf } from './layout.ts';

export interface TableRow {
  /** As the spreadsheet numbers it, from 1. */
  readonly number: number;
  /** Without blanks around them; line ends inside a cell are `\n`. */
  readonly cells: readonly string[];
}

export interface Table {
  readonly delimiter: Delimiter;
  readonly rows: readonly TableRow[];
}

/**
 * Reads a table. Without a delimiter it is the one that gives the most headings that are known: there may be more
 * decimal commas than semicolons between the cells. Gives the reason where a quotation mark makes it unreadable.
 */
export function readTable(written: string, delimiter?: Delimiter): Table | { readonly fault: string } {
  const text = written.replace(/^\uFEFF/, '');
  if (delimiter !== undefined) return dividedBy(delimiter, text);
  const tables = delimiters.map(each => dividedBy(each, text));
  const scores = tables.map(table => ('fault' in table ? 0 : headingsOf(table.rows)));
  const best = scores.indexOf(Math.max(...scores));
  return scores[best]! > 0 ? tables[best]! : tables.find(table => !('fault' in table)) ?? tables[0]!;
}

function dividedBy(delimiter: Delimiter, text: string): Table | { readonly fault: string } {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken) {
    return { fault: `a quotation mark in row ${(broken.row ?? 0) + 1} is not closed, or stands inside a cell; fix it in the sheet` };
  }
  const rows = data.map((cells, n) => ({ number: n + 1, cells: cells.map(tidy) }));
  // The line end of the last row begins no further one.
  while (rows.length > 0 && rows.at(-1)!.cells.every(cell => cell === '')) rows.pop();
  return { delimiter, rows };
}

function tidy(cell: string): string {
  return cell.replace(/\r\n?|[\v\f\u0085\u2028\u2029]/g, '\n').replace(/[\t\u00a0\u202f]/g, ' ').trim();
}

/** Signs that growers put into a cell in which nothing is to stand. */
const nothing = /^(?:[-–—/.]|n\/?a|n\. ?a\.)$/i;

export function isEmptyCell(cell: string): boolean {
  return cell === '' || nothing.test(cell);
}
