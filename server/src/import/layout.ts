/** Where the headings of a table are, and those above several columns. */
import { readCellDate } from './dates.ts';
import { readHeading } from './headings.ts';
import type { Table, TableRow } from './table.ts';

export interface Heading {
  /** As the mapping names the column, with the heading above several columns in front: `Germinated: 12/02`. */
  readonly label: string;
  readonly text: string;
  /** The heading above several columns; '' where there is none. */
  readonly group: string;
}

export interface Layout {
  /** The number of the row, as in {@link TableRow}. */
  readonly headingRow: number;
  readonly headings: readonly Heading[];
  /** The rows with headings, and what is above them. */
  readonly head: readonly TableRow[];
  /** Of these, rows with words that are no headings. */
  readonly titles: readonly TableRow[];
  readonly body: readonly TableRow[];
}

/** Rows within which headings are looked for. */
const DEEPEST = 12;

/** A day after sowing, or a week: `Day 14`, `d14`, `Week 2`. */
export function ageIn(text: string): { readonly day: number } | { readonly week: number } | undefined {
  const found = /^(day|d|tag|jour|j|week|wk|w|woche|kw|semaine)s?\.? ?(\d{1,3})$/i.exec(text);
  if (!found) return undefined;
  return /^[dtj]/i.test(found[1]!) ? { day: Number(found[2]) } : { week: Number(found[2]) };
}

/** Undefined where no row has two headings that are known. */
export function layoutOf({ rows }: Table, headingRow?: number): Layout | undefined {
  const at = headingRow === undefined ? bestRow(rows) : rows.findIndex(({ number }) => number === headingRow);
  const row = rows[at];
  if (!row) return undefined;
  const groups = groupsAbove(rows[at - 1], row);
  const width = Math.max(...rows.map(({ cells }) => cells.length));
  const named = Array.from({ length: width }, (_, n) => {
    const [text, group] = [row.cells[n] ?? '', groups[n] ?? ''];
    // A cell merged downwards has its text in the upper row.
    return text === '' ? { text: rows[at - 1] && groups.length > 0 ? rows[at - 1]!.cells[n] ?? '' : '', group: '' } : { text, group };
  });
  const head = rows.slice(0, at + 1);
  const titles = head.slice(0, groups.length > 0 ? -2 : -1).filter(({ cells }) => cells.some(cell => cell !== ''));
  return { headingRow: row.number, headings: labelled(named), head, titles, body: rows.slice(at + 1) };
}

function bestRow(rows: readonly TableRow[]): number {
  const scores = rows.slice(0, DEEPEST).map(headingsIn);
  const most = Math.max(...scores);
  return most < 2 ? -1 : scores.indexOf(most);
}

/** How many cells of a row are headings that are known; dates are some only beside others. */
function headingsIn({ cells }: TableRow): number {
  const known = cells.filter(cell => readHeading(cell).role !== undefined).length;
  return known === 0 ? 0 : known + cells.filter(cell => ageIn(cell) ?? readCellDate(cell, {})).length;
}

/** How many headings the best row has. */
export function headingsOf(rows: readonly TableRow[]): number {
  return Math.max(0, ...rows.slice(0, DEEPEST).map(headingsIn));
}

/** A cell merged over several columns has its text in the first of them. Text in the first column alone is a title. */
function groupsAbove(above: TableRow | undefined, { cells }: TableRow): string[] {
  const filled = above?.cells.flatMap((cell, n) => (cell === '' ? [] : [n])) ?? [];
  if (!above || filled.length === 0 || (filled.length === 1 && filled[0] === 0)) return [];
  let current = '';
  return cells.map((_, n) => {
    const cell = above.cells[n] ?? '';
    if (cell !== '') current = cell;
    return current;
  });
}

/** Labels differ, so that a mapping can name each column: the second `Notes` is `Notes (2)`. */
function labelled(named: readonly Omit<Heading, 'label'>[]): Heading[] {
  const seen = new Map<string, number>();
  return named.map(({ text, group }, n) => {
    const bare = (text === '' ? `column ${n + 1}` : isGrouped(text, group) ? `${group}: ${text}` : text).replaceAll(/\s+/g, ' ');
    const times = (seen.get(bare) ?? 0) + 1;
    seen.set(bare, times);
    return { label: times === 1 ? bare : `${bare} (${times})`, text, group };
  });
}

/** What stands below the wrong one of two headings is known by its own. */
function isGrouped(text: string, group: string): boolean {
  return group !== '' && (readHeading(text).role === undefined || readHeading(`${group} ${text}`).role !== undefined);
}
