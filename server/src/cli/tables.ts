/** `plumule export --tables`: a folder of tables for other programs. */
import path from 'node:path';
import { version } from '../../../package.json';
import { DiskFault } from '../disk/fault.ts';
import { writeFolder, type FileInFolder } from '../disk/own-folder.ts';
import { csvOf } from '../tables/csv.ts';
import { dataPackageOf, type Packing } from '../tables/data-package.ts';
import { jsonLinesOf } from '../tables/json-lines.ts';
import { jsonSchemaOf } from '../tables/json-schema.ts';
import { filledTables, type FilledTable } from '../tables/tables.ts';
import { counted } from '../model/counted.ts';
import { complain } from './output.ts';
import type { OpenJournal } from './open.ts';
import { findDuckDb, NO_DUCKDB, parquetFiles } from './parquet.ts';

export interface TablesOptions {
  readonly parquet?: true;
  /** What the tables call the journal. */
  readonly name?: string;
}

/** Rejects with a DiskFault where the folder cannot be written or DuckDB is missing. */
export async function writeTables(
  folder: string, journals: readonly OpenJournal[], { parquet, name }: TablesOptions,
): Promise<void> {
  if (name !== undefined && journals.length > 1) throw new DiskFault(name, 'a name is for one journal, and these are several');
  const filled = filledTables(journals.map(({ journal, asked, now, folder: own }) => (
    { journal, files: asked, now, name: name ?? nameOf(own) })));
  const duckDb = parquet && await findDuckDb();
  if (parquet && !duckDb) throw new DiskFault(folder, NO_DUCKDB);
  const packing = { now: journals[0]!.now, plumule: version, parquet: duckDb !== undefined };
  const files = [...tableFiles(filled, packing), ...(duckDb ? await parquetFiles(filled, duckDb) : [])];
  await writeFolder(folder, 'tables', files);
  const rows = filled.reduce((sum, each) => sum + each.rows.length, 0);
  complain(`wrote ${counted(filled.length, 'table')} with ${counted(rows, 'row')} to ${folder}`);
}

/** The current folder is told by its own name. */
function nameOf(folder: string): string {
  return folder === '.' ? path.basename(process.cwd()) : folder;
}

/** Each table as CSV and JSON Lines with its JSON Schema, and the description of them all. */
export function tableFiles(filled: readonly FilledTable[], packing: Packing): FileInFolder[] {
  const json = (value: object) => `${JSON.stringify(value, undefined, 2)}\n`;
  return [
    { name: 'datapackage.json', content: json(dataPackageOf(filled.map(({ table }) => table), packing)) },
    ...filled.flatMap(({ table, rows }) => [
      { name: `${table.name}.csv`, content: csvOf(table, rows) },
      { name: `${table.name}.jsonl`, content: jsonLinesOf(table, rows) },
      { name: `${table.name}.schema.json`, content: json(jsonSchemaOf(table)) },
    ]),
  ];
}
