/** Tables as Parquet files, by DuckDB, which Plumule does not bring along: it is larger than all the rest. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type * as Api from '@duckdb/node-api';
import type { FileInFolder } from '../disk/own-folder.ts';
import { jsonLinesOf } from '../tables/json-lines.ts';
import type { CellType, Field } from '../tables/table.ts';
import type { FilledTable } from '../tables/tables.ts';

const types: Readonly<Record<CellType, string>> = {
  string: 'VARCHAR', integer: 'BIGINT', number: 'DOUBLE', boolean: 'BOOLEAN', date: 'DATE', time: 'TIME',
};

export const NO_DUCKDB = 'Parquet needs DuckDB. Run “npm install --global @duckdb/node-api”, and try again.';

type DuckDb = Pick<typeof Api, 'DuckDBInstance'>;

/** Undefined where it is not installed beside Plumule, or not for this machine. */
export async function findDuckDb(): Promise<DuckDb | undefined> {
  try {
    return await import('@duckdb/node-api');
  } catch {
    return undefined;
  }
}

/** A file for each table. */
export async function parquetFiles(
  filled: readonly FilledTable[], { DuckDBInstance }: DuckDb,
): Promise<FileInFolder[]> {
  const scratch = await mkdtemp(path.join(tmpdir(), 'plumule-'));
  const instance = await DuckDBInstance.create(':memory:');
  try {
    const connection = await instance.connect();
    const files: FileInFolder[] = [];
    for (const { table, rows } of filled) {
      const [from, to] = ['jsonl', 'parquet'].map(end => path.join(scratch, `${table.name}.${end}`)) as [string, string];
      await writeFile(from, jsonLinesOf(table, rows));
      await connection.run(`COPY (SELECT * FROM ${reading(from, table.fields)}) TO ${quoted(to)} (FORMAT parquet)`);
      files.push({ name: `${table.name}.parquet`, content: await readFile(to) });
    }
    connection.closeSync();
    return files;
  } finally {
    instance.closeSync();
    await rm(scratch, { recursive: true, force: true });
  }
}

function reading(file: string, fields: readonly Field[]): string {
  const columns = fields.map(({ name, type }) => `${quoted(name)}: ${quoted(types[type])}`).join(', ');
  return `read_json(${quoted(file)}, format = 'newline_delimited', columns = {${columns}})`;
}

function quoted(text: string): string {
  return `'${text.replaceAll('\'', '\'\'')}'`;
}
