// More than a laptop is for: the counts of a society of growers, pooled by DuckDB and by Dask from the same files, and
// held to the measure of the report. tests/scale/world.test.ts holds these files to what Plumule writes.
//
//   npm run scale                          1000 growers, about ten million counts
//   npm run scale -- --journals 10000      about a hundred million; 9 GB on the disk
//   npm run scale -- --folder DIR --keep   where to put them, and keep them
//
// Dask comes from Debian: apt-get install python3-distributed python3-pandas.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { DuckDBInstance } from '@duckdb/node-api';
import { build } from 'esbuild';

const HERE = path.dirname(fileURLToPath(import.meta.url));
/** Growers in a file. */
const CHUNK = 500;
const WORKERS = '2';
const { values } = parseArgs({ options: {
  journals: { type: 'string', default: '1000' },
  lots: { type: 'string', default: '100' },
  counts: { type: 'string', default: '50' },
  folder: { type: 'string' },
  keep: { type: 'boolean' },
} });
const world = { journals: Number(values.journals), lots: Number(values.lots), counts: Number(values.counts) };
const place = mkdtempSync(path.join(tmpdir(), 'plumule-scale-'));
const folder = values.folder ?? path.join(place, 'tables');
mkdirSync(folder, { recursive: true });

try {
  const core = await bundled();
  await write(core);
  const wanted = timed('Plumule’s own measure, from the strata alone', () => core.pooled(world));
  const duckDb = await pooledByDuckDb(core);
  const dask = pooledByDask();
  for (const [name, found] of [['DuckDB', duckDb], ['Dask', dask]]) compare(name, wanted, found);
} finally {
  rmSync(place, { recursive: true, force: true });
  if (!values.keep && values.folder) rmSync(folder, { recursive: true, force: true });
}

async function bundled() {
  const file = path.join(place, 'core.cjs');
  await build({
    entryPoints: [path.join(HERE, 'core.ts')], outfile: file,
    bundle: true, format: 'cjs', platform: 'node', logLevel: 'error',
  });
  return createRequire(import.meta.url)(file);
}

async function withDuckDb(work) {
  const instance = await DuckDBInstance.create(':memory:', {
    temp_directory: path.join(place, 'scratch'), memory_limit: '6GB',
  });
  try {
    return await work(await instance.connect());
  } finally {
    instance.closeSync();
  }
}

/** The tables as CSV, some hundred growers in a file. */
async function write({ selectOf }) {
  const start = performance.now();
  await withDuckDb(async connection => {
    // In whatever order is quickest: what is pooled has none.
    await connection.run('SET preserve_insertion_order = false');
    for (let from = 1; from <= world.journals; from += CHUNK) {
      const to = Math.min(world.journals, from + CHUNK - 1);
      for (const table of ['lots', 'batches', 'observations']) {
        const file = path.join(folder, `${table}-${String(from).padStart(5, '0')}.csv`);
        await connection.run(`COPY (${selectOf(table, world, from, to)}) TO '${file}' (HEADER)`);
      }
    }
  });
  const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(path.join(folder, name)).size, 0);
  const { journals, lots, counts } = world;
  const rows = journals * lots * (1 + 3 + 2 * counts);
  told(`wrote ${rows.toLocaleString('en')} rows of ${journals.toLocaleString('en')} growers, ${(bytes / 1e9).toFixed(1)} GB of CSV`, start);
}

async function pooledByDuckDb({ strataSql, poolingSql }) {
  const start = performance.now();
  const page = readFileSync(path.join(HERE, '../../syntaxes/data.md'), 'utf8');
  const at = table => `read_csv('${folder}/${table}-*.csv')`;
  return withDuckDb(async connection => {
    await connection.run(`CREATE TABLE strata AS ${strataSql(at)}`);
    const read = await connection.runAndReadAll(poolingSql(page, 'strata'));
    told(`DuckDB ${(await connection.runAndReadAll('SELECT version()')).getRows()[0][0]}: strata from all counts, and pooled`, start);
    return read.getRowObjectsJson().map(numbersOf);
  });
}

function pooledByDask() {
  const start = performance.now();
  const python = ['python3', '/usr/bin/python3'].find(command => spawnSync(command, ['-c', 'import dask.dataframe, distributed']).status === 0);
  if (!python) throw new Error('Dask is not installed: apt-get install python3-distributed python3-pandas');
  const run = spawnSync(python, [path.join(HERE, 'pool.py'), folder, WORKERS], { encoding: 'utf8', cwd: place });
  if (run.status !== 0) throw new Error(run.stderr);
  const [about, ...lines] = run.stdout.trimEnd().split('\n').map(line => JSON.parse(line));
  if (about.strata !== world.journals * world.lots) throw new Error(`Dask found ${about.strata} strata`);
  told(`Dask, distributed, ${about.workers} workers: the same from the same files`, start);
  return lines.map(numbersOf);
}

function numbersOf({ species, odds_ratio: odds, chi_square: chiSquare }) {
  return { species, odds, chiSquare };
}

function compare(name, wanted, found) {
  if (found.length !== wanted.length) throw new Error(`${name} gives ${found.length} species, not ${wanted.length}`);
  let largest = 0;
  for (const { species, odds, chiSquare } of wanted) {
    const other = found.find(each => each.species === species);
    if (!other) throw new Error(`${name} does not give ${species}`);
    const apart = Math.abs(other.chiSquare - chiSquare) / Math.max(1, chiSquare);
    largest = Math.max(largest, Math.abs(other.odds / odds - 1), apart);
  }
  console.log(`${name} agrees on ${wanted.length} species to 1 part in ${(1 / Math.max(largest, 1e-16)).toExponential(0)}`);
  if (!(largest < 1e-9)) throw new Error(`${name} is off by ${largest}`);
}

function timed(what, work) {
  const start = performance.now();
  const result = work();
  told(what, start);
  return result;
}

function told(what, start) {
  console.log(`${((performance.now() - start) / 1000).toFixed(1).padStart(7)} s  ${what}`);
}
