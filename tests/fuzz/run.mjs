// Runs the property tests again and again, each time with another seed, until time is up or one fails.
//
//   npm run fuzz                              ten minutes, from a seed that chance gives
//   npm run fuzz -- --minutes 60              longer
//   npm run fuzz -- --seed 815 --minutes 0    once, with this seed, as after a failure
//   npm run fuzz -- tests/journal             these tests alone
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { values, positionals: only } = parseArgs({
  options: { minutes: { type: 'string', default: '10' }, seed: { type: 'string', default: String(randomInt(2 ** 31)) } },
  allowPositionals: true,
});
const [minutes, first] = [Number(values.minutes), Number(values.seed)];
if (!(minutes >= 0) || !Number.isInteger(first)) {
  console.error('fuzz: --minutes is a number from 0 on, --seed a whole number');
  process.exit(2);
}

const drawing = readdirSync(path.join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter(name => name.endsWith('.test.ts'))
  .map(name => `tests/${name.replaceAll(path.sep, '/')}`)
  .filter(name => /from 'fast-check'|arbitrary/.test(readFileSync(path.join(ROOT, name), 'utf8')))
  .filter(name => only.length === 0 || only.some(part => name.includes(part)));
if (drawing.length === 0) {
  console.error(`fuzz: no property tests in ${only.join(', ')}`);
  process.exit(2);
}

const vitest = path.join(ROOT, 'node_modules/vitest/vitest.mjs');
const config = path.join(ROOT, '.config/vitest.config.ts');
const end = Date.now() + minutes * 60_000;
let seed = first;
do {
  const start = Date.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, [vitest, 'run', '--config', config, ...drawing], {
    cwd: ROOT, encoding: 'utf8', maxBuffer: 2 ** 28,
    env: { ...process.env, PLUMULE_SEED: String(seed), NO_COLOR: '1' },
  });
  if (status !== 0) {
    // In it fast-check gives the path to the case that failed, and the smallest that fails.
    console.log(`${stdout}${stderr}`);
    console.log(`Seed ${seed} failed. Once more with it: npm run fuzz -- --seed ${seed} --minutes 0`);
    process.exit(1);
  }
  console.log(`seed ${seed}: ${drawing.length} files of tests hold (${((Date.now() - start) / 1000).toFixed(0)} s)`);
  seed = (seed + 1) % 2 ** 31;
} while (Date.now() < end);
