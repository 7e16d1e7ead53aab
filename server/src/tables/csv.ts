import Papa from 'papaparse';
import type { Cell, Field, Row, Table } from './table.ts';

/** What a spreadsheet takes for a formula, or would take for one behind a sign that it drops. */
const RUNS = /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;

/** As spreadsheets mark a text; one that begins with it gets a second, so that taking one away always undoes it. */
const MARK = '\'';

/**
 * A table as CSV (RFC 4180, with line feeds): a line of names, nothing for what is not known, full precision. In front
 * of a text that a spreadsheet would run stands an apostrophe; a number is no text and keeps its minus.
 */
export function csvOf({ fields }: Table, rows: readonly Row[]): string {
  const cells = rows.map(row => row.map((cell, i) => written(cell, fields[i]!)));
  return `${Papa.unparse([fields.map(({ name }) => name), ...cells], { newline: '\n' })}\n`;
}

function written(cell: Cell, { type }: Field): Cell {
  return type === 'string' && typeof cell === 'string' ? harmless(cell) : cell;
}

/** Example: harmless('=1+1') is "'=1+1" */
export function harmless(text: string): string {
  return RUNS.test(text) || text.startsWith(MARK) ? MARK + text : text;
}
