import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it } from 'vitest';
import { NO_DUCKDB } from '../../server/src/cli/parquet.ts';
import { tables } from '../../server/src/tables/tables.ts';
import { folderWith } from '../disk/helpers.ts';
import { copyProgram, plumule, shell } from './run.ts';

const JOURNAL = `zone Europe/Vienna
lot GEN-25 Gentiana lutea, 24 seeds, collected 2025-09-20
soak GEN-25 2026-01-11 19:00, GA3 500 ppm, 24 h, at jar 1
sow GEN-25 2026-01-12, 15 C
count GEN-25 2026-01-26, 3
  =SUM(A1:A9)
`;
const TODAY = ['--today', '2026-02-12'];
const names = tables.map(({ name }) => name);
const expected = (...more: string[]) => [
  'datapackage.json', 'plumule-files.json', ...names.flatMap(name => ['csv', 'jsonl', 'schema.json', ...more].map(end => `${name}.${end}`)),
].sort();

describe('plumule export --tables', () => {
  it('writes a folder of tables with their schemas, the same each time', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const wrote = { code: 0, stdout: '', stderr: 'plumule: wrote 9 tables with 25 rows to out\n' };
    const texts = [];
    for (let run = 0; run < 2; run++) {
      expect(await plumule(folder, 'export', '--tables', '-o', 'out', ...TODAY)).toEqual(wrote);
      const found = (await readdir(path.join(folder, 'out'))).sort();
      expect(found).toEqual(expected());
      texts.push(await Promise.all(found.map(name => readFile(path.join(folder, 'out', name), 'utf8'))));
    }
    expect(texts[1]).toEqual(texts[0]);
    expect(await readFile(path.join(folder, 'winter.germ'), 'utf8')).toBe(JOURNAL);
  });

  it('calls the journal by its folder, or by the name that it is given', async () => {
    const base = await folderWith({ 'mine/a.germ': JOURNAL, 'yours/a.germ': JOURNAL });
    const lots = async () => (await readFile(path.join(base, 'out/lots.csv'), 'utf8')).split('\n').slice(1, -1).map(line => line.split(',')[0]);
    await plumule(base, 'export', '--tables', 'mine', 'yours', '-o', 'out', ...TODAY);
    expect(await lots()).toEqual(['mine', 'yours']);
    await plumule(base, 'export', '--tables', 'mine', '--name', 'Anna', '-o', 'out', ...TODAY);
    expect(await lots()).toEqual(['Anna']);
    await plumule(path.join(base, 'mine'), 'export', '--tables', '-o', '../out', ...TODAY);
    expect(await lots()).toEqual(['mine']);
    expect(await plumule(base, 'export', '--tables', 'mine', 'yours', '--name', 'both', '-o', 'out')).toMatchObject({
      code: 2, stderr: 'plumule: both: a name is for one journal, and these are several\n',
    });
  });

  it('leaves later records out where the journal is asked for as it was', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const rows = async (table: string, asOf: string) => {
      await plumule(folder, 'export', '--tables', '-o', 'out', '--as-of', asOf);
      const lines = (await readFile(path.join(folder, `out/${table}.jsonl`), 'utf8')).trimEnd().split('\n');
      return lines.filter(line => line !== '').map(line => JSON.parse(line) as { event?: string; line: number; why?: string });
    };
    const events = async (asOf: string) => (await rows('events', asOf)).map(({ event }) => event);
    expect(await events('2026-01-25')).toEqual(['soak', 'sow']);
    expect(await rows('left_out', '2026-01-25')).toContainEqual(expect.objectContaining({ line: 5, why: 'after the day asked for' }));
    expect(await rows('observations', '2026-01-25')).toEqual([]);
    expect(await events('2026-01-26')).toEqual(['soak', 'sow', 'count']);
    expect(await plumule(folder, 'export', '--ics', '--as-of', '2026-01-25')).toMatchObject({ code: 2 });
  });

  it('writes to no folder that holds other things, and asks for one', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect(await plumule(folder, 'export', '--tables', '-o', '.', ...TODAY)).toMatchObject({
      code: 2, stderr: 'plumule: .: this folder holds other things than tables of Plumule; choose a new or an empty one\n',
    });
    expect(await plumule(folder, 'export', '--tables', ...TODAY)).toMatchObject({
      code: 2, stderr: 'plumule: say with -o which folder to write the tables to\n',
    });
    expect(await readdir(folder)).toEqual(['winter.germ']);
  });

  it('writes Parquet that DuckDB reads with the types of the columns, and every text whole', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect(await plumule(folder, 'export', '--tables', '--parquet', '-o', 'out', ...TODAY)).toMatchObject({ code: 0 });
    expect((await readdir(path.join(folder, 'out'))).sort()).toEqual(expected('parquet'));
    const instance = await DuckDBInstance.create(':memory:');
    const connection = await instance.connect();
    const rows = async (sql: string) => (await connection.runAndReadAll(sql)).getRowObjectsJson();
    const at = (name: string) => `'${path.join(folder, 'out', name)}'`;
    expect(await rows(`SELECT event, "date", "time", "day", duration_h_least, remark FROM ${at('events.parquet')}`)).toEqual([
      { event: 'soak', date: '2026-01-11', time: '19:00:00', day: '-1', duration_h_least: 24, remark: null },
      { event: 'sow', date: '2026-01-12', time: null, day: '0', duration_h_least: null, remark: null },
      { event: 'count', date: '2026-01-26', time: null, day: '14', duration_h_least: null, remark: '=SUM(A1:A9)' },
    ]);
    for (const name of names) {
      const count = await rows(`SELECT count(*) AS n FROM ${at(`${name}.parquet`)}`);
      const lines = (await readFile(path.join(folder, 'out', `${name}.jsonl`), 'utf8')).split('\n').length - 1;
      expect(count, name).toEqual([{ n: String(lines) }]);
    }
    instance.closeSync();
  });

  it('says what to install where DuckDB is missing, and writes nothing', async () => {
    const folder = await folderWith({ 'journal/winter.germ': JOURNAL });
    await copyProgram(folder);
    const run = await shell(folder, 'node plumule.cjs export --tables --parquet -o out journal');
    expect(run).toEqual({ code: 2, stdout: '', stderr: `plumule: out: ${NO_DUCKDB}\n` });
    expect(await readdir(folder)).not.toContain('out');
  });
});
