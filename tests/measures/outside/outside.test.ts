// Recomputes a table of cases with R and with SciPy and compares to ten digits. On Debian:
// apt-get install r-base-core r-cran-survival python3-scipy (and python3-statsmodels for the Breslow-Day test).
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { ours, type Case } from './ours.ts';

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const cases = JSON.parse(readFileSync(here('cases.json'), 'utf8')) as readonly Case[];

/** The first of several commands that runs a short probe. */
function first(commands: readonly string[], ...probe: readonly string[]): string | undefined {
  return commands.find(command => spawnSync(command, probe, { encoding: 'utf8' }).status === 0);
}

function answers(command: string, script: string): readonly string[] {
  const lines = cases.map(([kind, ...vectors]) => [kind, ...vectors.map(vector => vector.join(','))].join(';'));
  const run = spawnSync(command, [script], { input: `${lines.join('\n')}\n`, encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return run.stdout.trimEnd().split('\n').map(line => line.trim());
}

const PYTHONS = ['python3', '/usr/bin/python3'];

const PYTHON = first(PYTHONS, '-c', 'import scipy.stats, statsmodels') ?? first(PYTHONS, '-c', 'import scipy.stats');

const PROGRAMS = [
  ['R', first(['Rscript'], '-e', 'library(survival)'), here('outside.R'), ['breslow-day', 'rank-test', 'power', 'beta-binomial']],
  ['SciPy', PYTHON, here('outside.py'), [
    'log-rank', 'stratified-log-rank', 'kaplan-meier', 'trend', 'mantel-haenszel', 'holm',
    // From statsmodels, which may be missing where not everything is meant to be checked.
    ...(process.env.CI ? [] : ['breslow-day']),
  ]],
] as const;

for (const [program, command, script, lacking] of PROGRAMS) {
  // Only a run that is meant to check everything fails for want of the program.
  const missing = command === undefined && !process.env.CI;
  describe.skipIf(missing)(`${program}${missing ? ' (not installed here: nothing was compared)' : ''}`, () => {
    let given: readonly string[] = [];

    beforeAll(() => {
      if (command !== undefined) given = answers(command, script);
    }, 60_000);

    test('is installed and answers every case', () => {
      expect(command, `${program} is not installed`).toBeDefined();
      expect(given).toHaveLength(cases.length);
    });

    test.each(cases.map((one, i) => [JSON.stringify(one), one, i] as const))('agrees on %s', (_, one, i) => {
      const answer = given[i];
      if (answer === '-') {
        expect(lacking).toContain(one[0]);
        return;
      }
      const found = ours(one);
      const theirs = answer?.split(/\s+/) ?? [];
      expect(theirs).toHaveLength(found.length);
      for (const [k, number] of theirs.entries()) {
        const own = found[k];
        if (number === 'NA') expect(own).toBeUndefined();
        else expect(Math.abs(own! - Number(number)), `${own} is not ${number}`).toBeLessThanOrEqual(tolerance(one[0], number));
      }
    });
  });
}

/** What an optimiser or a sum over steps, on either side, gives away. */
const ROUGH: Readonly<Record<string, number>> = { boschloo: 1e-7, 'both-reach': 1e-6, joint: 1e-6, 'of-dishes': 1e-3, power: 3e-3 };

/** Ten digits, with room for numbers that are 0 but for rounding. */
function tolerance(kind: string, number: string): number {
  return (ROUGH[kind] ?? 1e-10) * Math.abs(Number(number)) + 1e-14;
}
