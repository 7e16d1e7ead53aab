/** One row of a sheet, read by what its columns are; what was taken of it and what was not. */
import type { DateOrder } from './answers.ts';
import { orderShown, readCellDate, type CellDate } from './dates.ts';
import type { Column, Mapping } from './mapping.ts';
import type { Role } from './roles.ts';
import { isEmptyCell, type TableRow } from './table.ts';
import { whatOf, type What } from './what.ts';

export interface Cell {
  readonly text: string;
  readonly column: number;
}

/** A cell whose date cannot be read before the grower says more. */
export interface DateAsked {
  readonly asks: 'order' | 'year';
  readonly heading: string;
  readonly cell: string;
  readonly row: number;
}

/** How the dates of each column are ordered: as the sheet as a whole, else as the column itself shows. */
export function ordersOf(mapping: Mapping, body: readonly TableRow[]): (DateOrder | undefined)[] {
  return mapping.columns.map((_, n) => mapping.dates ?? orderShown(body.map(({ cells }) => cells[n] ?? '')));
}

/** What is not understood stays a remark of the row. */
function columnOf(column: Column, what: What | undefined, word: string): Column {
  switch (column.is) {
    case 'what': return what ? column : { ...column, is: 'remark' };
    case 'date': return what ? { ...column, is: what.date } : column;
    case 'number':
      if (!what) return { ...column, is: 'remark' };
      return what.number === 'number' ? column : { ...column, is: what.number, heading: word };
    default: return column;
  }
}

/** Roles that an empty cell has from the row above, where the grower says so. */
const repeated: ReadonlySet<Role> = new Set(['lot', 'plant', 'genus', 'species', 'date']);

export class RowReader {
  readonly number: number;
  readonly asked: DateAsked[] = [];
  /** What each column is in this row: where another one says what happened, it may be what that makes of it. */
  readonly #columns: readonly Column[];
  /** The column that says what happened, and the one that it makes something of. */
  readonly #what: { readonly column: number; readonly of: number } | undefined;
  readonly #taken = new Set<number>();
  readonly #why = new Map<number, string>();

  constructor(
    readonly row: TableRow, readonly mapping: Mapping, readonly orders: readonly (DateOrder | undefined)[],
    readonly above: RowReader | undefined,
  ) {
    this.number = row.number;
    const column = mapping.columns.findIndex(({ is }) => is === 'what');
    const word = (row.cells[column] ?? '').trim();
    const what = word === '' ? undefined : whatOf(word);
    this.#columns = column < 0 ? mapping.columns : mapping.columns.map(each => columnOf(each, what, word));
    const of = what && mapping.columns.findIndex(({ is }) => is === (what.date === 'date' ? 'number' : 'date'));
    this.#what = of === undefined ? undefined : { column, of };
  }

  /** The same row, of which nothing has been taken yet. */
  again(): RowReader {
    return new RowReader(this.row, this.mapping, this.orders, this.above);
  }

  get isEmpty(): boolean {
    return this.row.cells.every(isEmptyCell);
  }

  has(role: Role): boolean {
    return this.mapping.columns.some(({ is }) => is === role);
  }

  /** The cells of a role in which something stands. */
  cells(role: Role): (Cell & { readonly as: Column })[] {
    return this.#columns.flatMap((as, column) => {
      const text = this.row.cells[column] ?? '';
      return as.is === role && !isEmptyCell(text) ? [{ text, column, as }] : [];
    });
  }

  /** The cell of a role of which there is one column. */
  cell(role: Role): Cell | undefined {
    const [own] = this.cells(role);
    if (own || !this.mapping.sameAsAbove || !repeated.has(role)) return own;
    // The text of another row; nothing of this one is taken with it.
    const above = this.above?.cell(role);
    return above && { text: above.text, column: -1 };
  }

  date(role: Role): (CellDate & Cell) | undefined {
    const cell = this.cell(role);
    return cell && this.dateIn(cell);
  }

  dateIn(cell: Cell): (CellDate & Cell) | undefined {
    const order = this.orders[cell.column] ?? this.mapping.dates;
    const reading = readCellDate(cell.text, { order, year: this.mapping.year });
    const heading = this.mapping.columns[cell.column]?.heading ?? '';
    if (reading && 'asks' in reading) {
      this.asked.push({ asks: reading.asks, heading, cell: cell.text, row: this.number });
      return undefined;
    }
    if (!reading) this.leave(cell.column, `“${cell.text}” is not a day`);
    return reading && { ...reading, ...cell };
  }

  take(columns: readonly number[]): void {
    for (const column of columns) this.#taken.add(column);
  }

  isTaken(column: number): boolean {
    return this.#taken.has(column) || (column === this.#what?.column && this.#taken.has(this.#what.of));
  }

  /** Why a cell fits no record. */
  leave(column: number, why: string): void {
    if (!this.#why.has(column)) this.#why.set(column, why);
  }

  /** What has found no place in a record: the words, and the reason where there is more to say. */
  rest(): { readonly column: Column; readonly text: string; readonly why: string | undefined }[] {
    return this.row.cells.flatMap((text, n) => {
      const column = this.mapping.columns[n] ?? { heading: `column ${n + 1}`, is: 'remark' as const };
      const isLeft = !isEmptyCell(text) && !this.isTaken(n) && column.is !== 'nothing';
      return isLeft ? [{ column, text, why: this.#why.get(n) }] : [];
    });
  }

  /** The plant's name, from one column or two. */
  plant(): { readonly text: string; readonly columns: readonly number[] } | undefined {
    const parts = [this.cell('genus'), this.cell(this.has('genus') ? 'species' : 'plant')].filter(cell => cell !== undefined);
    return parts.length === 0 ? undefined : { text: parts.map(({ text }) => text).join(' '), columns: parts.map(({ column }) => column) };
  }
}
