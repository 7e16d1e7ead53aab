import type { Row, Table } from './table.ts';

/** A table as JSON Lines: an object for each row, `null` for what is not known. */
export function jsonLinesOf({ fields }: Table, rows: readonly Row[]): string {
  return rows.map(row => `${JSON.stringify(Object.fromEntries(fields.map(({ name }, i) => [name, row[i]])))}\n`).join('');
}
