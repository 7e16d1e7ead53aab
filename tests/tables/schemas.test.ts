// The libraries of the two standards judge what is written: Ajv for JSON Schema, datapackage for Frictionless Data.
import { readFileSync, readdirSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { Package } from 'datapackage';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableFiles } from '../../server/src/cli/tables.ts';
import { jsonSchemaOf } from '../../server/src/tables/json-schema.ts';
import type { Cell, Source } from '../../server/src/tables/table.ts';
import { filledTables, tables } from '../../server/src/tables/tables.ts';
import { folderWith } from '../disk/helpers.ts';
import { at } from '../report/helpers.ts';
import { anyJournal, sourceOf } from './helpers.ts';

const SAMPLES = new URL('../../samples/', import.meta.url);
const samples = readdirSync(SAMPLES).filter(name => name.endsWith('.germ'))
  .map(name => ({ name, text: readFileSync(new URL(name, SAMPLES), 'utf8') }));

const ajv = new Ajv2020({ strict: true, allErrors: true, formats: { date: /^\d{4}-\d{2}-\d{2}$/ }, allowUnionTypes: true });
const validators = new Map(tables.map(table => [table.name, ajv.compile(jsonSchemaOf(table))]));

function expectValid(sources: readonly Source[]): void {
  for (const { table: { name, fields }, rows } of filledTables(sources)) {
    const validate = validators.get(name)!;
    for (const row of rows) {
      const object = Object.fromEntries(fields.map((field, i): [string, Cell] => [field.name, row[i]!]));
      expect(validate(object), JSON.stringify([object, validate.errors])).toBe(true);
    }
  }
}

describe('the JSON Schema of a table', () => {
  it('holds for every row of the samples', () => expectValid([sourceOf(samples)]));

  it('holds for every row of any journal', () => {
    fc.assert(fc.property(anyJournal, files => expectValid([sourceOf(files)])), { numRuns: 30 });
  });

  it('refuses a row without its key, with a column of another name, and with an estimate as a word', () => {
    const [{ table, rows }] = filledTables([sourceOf(samples)]) as [ReturnType<typeof filledTables>[number]];
    const row = Object.fromEntries(table.fields.map((field, i) => [field.name, rows[0]![i]]));
    const validate = validators.get('lots')!;
    expect(validate(row)).toBe(true);
    for (const change of [{ lot: null }, { other: 1 }, { seeds: 'about 40' }, { collected_first: '1.9.2025' }]) {
      expect(validate({ ...row, ...change })).toBe(false);
    }
  });
});

/** Reads all tables through the library of the standard, which casts each cell to the type of its column. */
async function readPackage(sources: readonly Source[]): Promise<Record<string, readonly Record<string, unknown>[]>> {
  const files = tableFiles(filledTables(sources), { now: at('2026-06-01'), plumule: '0', parquet: false });
  const folder = await folderWith(Object.fromEntries(files.map(({ name, content }) => [name, content])));
  const descriptor = JSON.parse(String(files[0]!.content)) as object;
  const loaded = await Package.load(descriptor, { basePath: folder, strict: true });
  expect(loaded.errors).toEqual([]);
  expect(loaded.valid).toBe(true);
  const found: Record<string, readonly Record<string, unknown>[]> = {};
  for (const resource of loaded.resources) {
    expect(resource.valid, resource.name).toBe(true);
    if (!resource.tabular) continue;
    found[resource.name] = await resource.read({ keyed: true, relations: true });
    expect(await resource.checkRelations(), resource.name).toBe(true);
  }
  return found;
}

describe('datapackage.json', () => {
  it('is a valid package whose tables have unique keys and refer to rows that exist', async () => {
    const second = sourceOf(samples, 'second');
    const found = await readPackage([sourceOf(samples), second]);
    expect(Object.keys(found)).toEqual(tables.map(({ name }) => name.replaceAll('_', '-')));
    for (const { table, rows } of filledTables([sourceOf(samples), second])) {
      expect(found[table.name.replaceAll('_', '-')]).toHaveLength(rows.length);
      const places = table.key.map(name => table.fields.findIndex(field => field.name === name));
      const keys = rows.map(row => JSON.stringify(places.map(place => row[place])));
      expect(new Set(keys).size, table.name).toBe(rows.length);
    }
    expect(found.lots![0]).toMatchObject({ journal: 'mine' });
  });

  it('holds for journals of any kind', async () => {
    for (const files of fc.sample(anyJournal, { numRuns: 8, seed: 20 })) await readPackage([sourceOf(files)]);
  });
});
