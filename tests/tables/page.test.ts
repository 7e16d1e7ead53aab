// Runs the examples of the page on tables. On Debian: apt-get install r-base-core python3-pandas.
// DuckDB comes from npm.
import { spawnSync } from 'node:child_process';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, it } from 'vitest';
import { tableFiles } from '../../server/src/cli/tables.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { filledTables, tables } from '../../server/src/tables/tables.ts';
import type { Source } from '../../server/src/tables/table.ts';
import { folderWith } from '../disk/helpers.ts';
import { at } from '../report/helpers.ts';
import { sourceOf } from './helpers.ts';

const PAGE = await readFile(new URL('../../syntaxes/data.md', import.meta.url), 'utf8');
const SAMPLES = new URL('../../samples/', import.meta.url);
const NOW = at('2027-06-01');

let read: Promise<Source> | undefined;

function samples(): Promise<Source> {
  return read ??= readSamples();
}

async function readSamples(): Promise<Source> {
  const names = (await readdir(SAMPLES)).filter(name => name.endsWith('.germ'));
  const files = await Promise.all(names.map(async name => ({ name, text: await readFile(new URL(name, SAMPLES), 'utf8') })));
  return sourceOf(files, 'samples', NOW);
}

/** The program of a block of the page, and what it is said to print. */
function example(language: string): { program: string; printed: string } {
  const [, program = '', printed = ''] = new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\`\\n\\n\`\`\`text\\n(.*?)^\`\`\``, 'ms').exec(PAGE) ?? [];
  return { program, printed };
}

let written: ReturnType<typeof tableFiles> | undefined;

/** A folder with the tables of the samples in `tables`. */
async function folderWithTables(): Promise<string> {
  const folder = await folderWith({});
  await mkdir(path.join(folder, 'tables'));
  const files = written ??= tableFiles(filledTables([await samples()]), { now: NOW, plumule: '0', parquet: false });
  for (const { name, content } of files) await writeFile(path.join(folder, 'tables', name), content);
  return folder;
}

/** The first of several commands that runs a short probe. */
function first(commands: readonly string[], ...probe: readonly string[]): string | undefined {
  return commands.find(command => spawnSync(command, probe, { encoding: 'utf8' }).status === 0);
}

const PROGRAMS = [
  ['R', 'r', first(['Rscript'], '--version'), '-e'],
  ['pandas', 'python', first(['python3', '/usr/bin/python3'], '-c', 'import pandas'), '-c'],
] as const;

for (const [name, language, command, flag] of PROGRAMS) {
  // Only a run that is meant to check everything fails for want of the program.
  const missing = command === undefined && !process.env.CI;
  describe.skipIf(missing)(`the example for ${name}${missing ? ' (not installed here: it was not run)' : ''}`, () => {
    it('prints what the page says', async () => {
      expect(command, `${name} is not installed`).toBeDefined();
      const { program, printed } = example(language);
      const run = spawnSync(command!, [flag, program], { cwd: await folderWithTables(), encoding: 'utf8' });
      expect({ stdout: run.stdout, stderr: run.stderr }).toEqual({ stdout: printed, stderr: '' });
    });
  });
}

async function rowsOf(sql: string): Promise<readonly unknown[][]> {
  const instance = await DuckDBInstance.create(':memory:');
  try {
    const read = await (await instance.connect()).runAndReadAll(sql);
    return [read.columnNames(), ...read.getRowsJson()];
  } finally {
    instance.closeSync();
  }
}

describe('the example for DuckDB', () => {
  it('prints what the page says', async () => {
    const { program, printed } = example('sql');
    const folder = await folderWithTables();
    const rows = await rowsOf(program.replace('tables/', `${folder}/tables/`));
    expect(rows.map(row => `${row.join(', ')}\n`).join('')).toBe(printed);
  });

  it('gives what the report by species gives, to the last digit', async () => {
    const { journal } = await samples();
    const book = new ProblemBook(journal);
    book.update(NOW);
    const { plants } = reportOf(journal, book, { now: NOW, by: 'species' }).plants!;
    const agents = plants.flatMap(({ plant, agents: all }) => all.map(each => ({ ...each, plant })));
    const reported = agents.flatMap(({ agent, plant, across: { mantelHaenszel: found } }) => (
      isUndefined(found) || isUndefined(found.oddsRatio) ? [] : [{
        key: `${plant.toLowerCase()} ${agent.word}`,
        numbers: [found.oddsRatio.value, found.oddsRatio.low, found.oddsRatio.high, found.corrected.chiSquare],
      }]));
    const { program } = example('sql');
    const exact = program.replaceAll(/round\((.*?), \d\) AS/g, '($1) AS')
      .replace('WHERE strata > 1', 'WHERE r > 0 AND s > 0')
      .replace('tables/', `${await folderWithTables()}/tables/`);
    const [, ...rows] = await rowsOf(exact);
    expect(rows.length).toBeGreaterThan(5);
    expect(rows.map(([species, agent]) => `${String(species)} ${String(agent)}`).sort())
      .toEqual(reported.map(({ key }) => key).sort());
    for (const [species, agent, , ...numbers] of rows) {
      const report = reported.find(({ key }) => key === `${String(species)} ${String(agent)}`)!;
      for (const [i, wanted] of report.numbers.entries()) {
        expect(Math.abs(Number(numbers[i]) - wanted)).toBeLessThanOrEqual(1e-12 * Math.max(1, wanted));
      }
    }
  });
});

describe('the page on tables', () => {
  it('names every table', () => {
    for (const { name } of tables) expect(PAGE).toContain(`| \`${name}\` |`);
  });
});
