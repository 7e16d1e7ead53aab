import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { plumule as program } from '../../server/src/cli/program.ts';
import { folderWith } from '../disk/helpers.ts';
import { built, plumule, type Outcome } from './run.ts';

const JOURNAL = `zone Europe/Vienna
lot GEN-25 Gentiana lutea, 96 seeds, collected 2025-08
split GEN-25: A 48, B 48
soak GEN-25/A 2026-01-05 18:00, GA3 500 ppm, 24 h
soak GEN-25/B 2026-01-05 18:00, water, 24 h
lift GEN-25/A 2026-01-06 18:00
lift GEN-25/B 2026-01-06 18:00
regime cold, chill 4 C 60 days, warm 18 C 30 days
sown GEN-25/A 2026-01-06
note  GEN-25/A 2026-01-12, mould
sowed GEN-25
`;
const TODAY = ['--today', '2026-01-12T08:00'];

/** What a command leaves behind: its outcome, and the files of its folder. */
async function trace(
  run: typeof plumule, journal: string, args: readonly string[],
): Promise<Outcome & { files: readonly string[] }> {
  const folder = await folderWith({ 'winter.germ': journal });
  const outcome = await run(folder, ...args);
  const names = (await readdir(folder)).sort();
  return { ...outcome, files: await Promise.all(names.map(name => readFile(path.join(folder, name), 'utf8'))) };
}

/** Each command, each exit code, and what ends otherwise. */
const RUNS: readonly (readonly [code: number, args: readonly string[]])[] = [
  [0, ['--version']],
  [0, ['report', '--help']],
  [2, ['chek']],
  [1, ['check', ...TODAY]],
  [2, ['check', '--format', 'json', 'gone.germ', 'winter.germ', ...TODAY]],
  [0, ['report', '--format', 'json', ...TODAY]],
  [0, ['due', ...TODAY]],
  [0, ['when', 'cold', '--ends-by', '2026-06-01', ...TODAY]],
  [2, ['export']],
  [0, ['advise', 'GEN-25', ...TODAY]],
  [2, ['draw', 'GEN-25/C', ...TODAY]],
  [1, ['labels', ...TODAY]],
  [0, ['round', ...TODAY]],
  [2, ['import', 'gone.csv']],
  [2, ['publish']],
  [0, ['completions', 'bash']],
  [0, ['plan', '24', '24']],
  [1, ['mix', 'GA3', '500 ppm', '20 mL']],
  [0, ['mix', 'GA3', '500 ppm', '20 mL', '--from', '1000 ppm']],
  [1, ['format', '--check', '.']],
  [0, ['format', '--write', '.']],
  [2, ['diff']],
  [0, ['setup', 'git', '--ci']],
  [0, ['merge', 'winter.germ', 'winter.germ', 'winter.germ']],
];

describe('the built command line, as a process of its own', () => {
  test.each(RUNS)('ends with %i, prints and writes what it does within the tests: %j', async (code, args) => {
    const alone = await trace(built, JOURNAL, args);
    expect(alone.code).toBe(code);
    expect(alone).toEqual(await trace(plumule, JOURNAL, args));
  });

  it('is tested with every command but serve, which has a test of its own', () => {
    const names = program.commands.map(command => command.name()).filter(name => name !== 'serve');
    expect(names.filter(name => !RUNS.some(([, [command]]) => command === name))).toEqual([]);
  });
});
