/** The tables of a journal, and of several together. */
import { batches } from './batches.ts';
import { comparisons } from './comparisons.ts';
import { doses } from './doses.ts';
import { events } from './events.ts';
import { leftOut } from './left-out.ts';
import { lots } from './lots.ts';
import { measures } from './measures.ts';
import { observations } from './observations.ts';
import { strata } from './strata.ts';
import type { Row, Source, Table } from './table.ts';

/** Each behind those that it refers to. */
export const tables: readonly Table[] = [
  lots, batches, events, doses, observations, measures, comparisons, strata, leftOut,
];

export interface FilledTable {
  readonly table: Table;
  readonly rows: readonly Row[];
}

/** Journal by journal, in the order in which they come. */
export function filledTables(sources: readonly Source[]): FilledTable[] {
  return tables.map(table => ({ table, rows: sources.flatMap(source => table.rowsOf(source)) }));
}
