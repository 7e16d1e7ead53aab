import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultsOf } from './cell.ts';
import { cells, coverages, growers } from './core.ts';
import { breakEven, EFFECT_ROWS, growerLines, linesOf, NO_EFFECT_ROWS, saidLines, type Results } from './reference.ts';

const results = JSON.parse(readFileSync(new URL('results.json', import.meta.url), 'utf8')) as Results;
const reference = readFileSync(new URL('../../syntaxes/README.md', import.meta.url), 'utf8');

// `npm run simulate -- --save` writes the numbers; what is expected here is to be copied then.
test('the reference prints what the last run found', () => {
  const from = reference.indexOf('| no effect |');
  const to = reference.indexOf('\n\n', reference.indexOf('| interval, 24 a side |'));
  expect(reference.slice(from, to).split('\n').filter(line => line.startsWith('|'))).toEqual(linesOf(results).filter(line => line !== ''));
});

test('and what came of following the advice', () => {
  expect(reference).toContain(`\n${growerLines(results).join('\n')}\n\n`);
  expect(reference).toContain(`\n${saidLines(results).join('\n')}\n\n`);
  const [few, many] = [breakEven(results, 24), breakEven(results, 60)].map(ratio => ratio.toFixed(1));
  expect(reference).toContain(`${few} times as many of your plants as it harms (24 seeds a winter; ${many} with 60)`);
});

test('every cell that is kept or printed is still simulated', () => {
  const names = new Set([...cells, ...coverages, ...growers].map(({ name }) => name));
  for (const name of Object.keys(results)) expect(names).toContain(name);
  for (const { cell } of [...NO_EFFECT_ROWS, ...EFFECT_ROWS]) expect(names).toContain(cell);
});

test('no cell that was kept is beyond its bar by more than two Monte Carlo errors', () => {
  const beyond = cells.filter(({ name }) => name in results).flatMap(cell => {
    const kept = results[cell.name] as Record<string, number>;
    return faultsOf(cell, { lots: kept.lots!, found: kept, rules: {} }).map(fault => `${cell.name}: ${fault}`);
  });
  expect(beyond).toEqual([]);
});
