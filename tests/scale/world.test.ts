// A few growers of the world that `npm run scale` makes thousands of: what the SQL gives is what Plumule writes.
import { readFile } from 'node:fs/promises';
import { DuckDBInstance, type DuckDBConnection } from '@duckdb/node-api';
import { describe, expect, it, onTestFinished } from 'vitest';
import { jsonLinesOf } from '../../server/src/tables/json-lines.ts';
import { filledTables } from '../../server/src/tables/tables.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { at, reportFor } from '../report/helpers.ts';
import { sourceOf, tableOf } from '../tables/helpers.ts';
import { journalText, nameOf, ORDERS, poolingSql, selectOf, strataOf, strataSql, type World } from './world.ts';

const WORLD: World = { journals: 3, lots: 15, counts: 6 };
const NOW = at('2026-06-01', 12);
const PAGE = await readFile(new URL('../../syntaxes/data.md', import.meta.url), 'utf8');
const numbers = Array.from({ length: WORLD.journals }, (_, i) => i + 1);
const filled = filledTables(numbers.map(j => sourceOf([{ name: 'winter.germ', text: journalText(j, WORLD) }], nameOf(j), NOW)));

async function connected(): Promise<DuckDBConnection> {
  const instance = await DuckDBInstance.create(':memory:');
  onTestFinished(() => instance.closeSync());
  return instance.connect();
}

async function rowsOf(connection: DuckDBConnection, sql: string): Promise<Record<string, unknown>[]> {
  const read = await connection.runAndReadAll(sql);
  // A whole number of SQL may be larger than one of JSON, and is text there.
  const types = Object.fromEntries(read.columnNames().map((name, i) => [name, String(read.columnType(i))]));
  return read.getRowObjectsJson().map(row => Object.fromEntries(Object.entries(row).map(([name, value]) => (
    [name, typeof value === 'string' && /INT|DECIMAL|DOUBLE/.test(types[name]!) ? Number(value) : value]))));
}

describe('a world of growers', () => {
  it.each(['lots', 'batches', 'observations'] as const)('has the table of %s that Plumule writes of its journals', async name => {
    const { table, rows } = tableOf(filled, name);
    const wanted = jsonLinesOf(table, rows).trimEnd().split('\n').map(line => JSON.parse(line) as object);
    expect(await rowsOf(await connected(), `${selectOf(name, WORLD, 1, WORLD.journals)} ${ORDERS[name]}`)).toEqual(wanted);
  });

  it('gives from its counts the strata that Plumule writes, and from these the numbers of the report by species', async () => {
    const connection = await connected();
    for (const name of ['lots', 'batches', 'observations'] as const) {
      await connection.run(`CREATE TABLE ${name} AS ${selectOf(name, WORLD, 1, WORLD.journals)}`);
    }
    await connection.run(`CREATE TABLE strata AS ${strataSql(name => name)}`);
    const columns = ['journal', 'lot', 'species', 'agent', 'treated_germinated', 'treated_seeds', 'untreated_germinated', 'untreated_seeds'];
    const { table, rows } = tableOf(filled, 'strata');
    const places = columns.map(column => table.fields.findIndex(({ name }) => name === column));
    const found = (await rowsOf(connection, 'SELECT * FROM strata')).map(row => columns.map(column => row[column]));
    expect(found.map(String).sort()).toEqual(rows.map(row => places.map(place => row[place])).map(String).sort());
    expect([...strataOf(WORLD)].map(({ species, treated }) => `${species} ${treated}`))
      .toEqual(rows.map(row => `${row[places[2]!]!} ${row[places[4]!]!}`));

    // In one journal, every lot has an id of its own.
    const text = numbers.map(j => journalText(j, WORLD).replaceAll(/\bL(?=\d)/g, `L${j}-`)).join('');
    const { plants } = reportFor(text, NOW, { by: 'species' });
    const reported = plants!.plants.flatMap(({ plant, agents: [tried] }) => {
      const { mantelHaenszel: test } = tried!.across;
      if (isUndefined(test) || isUndefined(test.oddsRatio)) return [];
      const { value, low, high } = test.oddsRatio;
      return [[plant.toLowerCase(), value, low, high, test.corrected.chiSquare] as const];
    });
    const pooled = await rowsOf(connection, poolingSql(PAGE, 'strata'));
    expect(reported.length).toBeGreaterThan(10);
    expect(pooled.map(({ species }) => species)).toEqual(reported.map(([species]) => species));
    for (const [i, [, ...wanted]] of reported.entries()) {
      const { odds_ratio: odds, low_95: low, high_95: high, chi_square: chi } = pooled[i]!;
      for (const [n, number] of [odds, low, high, chi].entries()) expect(Number(number)).toBeCloseTo(wanted[n]!, 10);
    }
  });
});
