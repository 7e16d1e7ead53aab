import { expect, test } from 'vitest';
import { faultsOf, NO_EFFECT, run, together, type Cell } from './cell.ts';
import { cells } from './core.ts';

test('cells have names of their own', () => {
  const names = cells.map(({ name }) => name);
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
});

const cell: Cell = {
  name: 'a verdict by chance', bars: NO_EFFECT,
  judge: random => [{ verdict: random() < 0.5 ? 'worth repeating' : 'cannot tell', rule: 'chance' }],
};

test('a cell comes to the same in one run and in portions', () => {
  expect(together([run(cell, 1, 0, 30), run(cell, 1, 30, 100)])).toEqual(run(cell, 1, 0, 100));
  expect(run(cell, 1, 0, 100)).not.toEqual(run(cell, 2, 0, 100));
});

test('several treatments of a lot count once', () => {
  const both: Cell = { ...cell, judge: () => [
    { verdict: 'worth repeating', rule: 'more' }, { verdict: 'worth repeating', rule: 'more' }, { verdict: 'harmful', rule: 'fewer' }] };
  const { found, rules } = run(both, 1, 0, 10);
  expect(found).toMatchObject({ worth: 10, harmful: 10, 'cannot tell': 0 });
  expect(rules).toEqual({ more: 10, fewer: 10 });
});

test('a share fails beyond two standard errors of its bar', () => {
  const tally = (worth: number) => ({ lots: 1000, found: { worth, harmful: 0, 'no sign': 0, 'well without': 0, 'cannot tell': 0 }, rules: {} });
  // The standard error of 2.5 % in 1000 lots is 0.49 %.
  expect(faultsOf(cell, tally(34))).toEqual([]);
  expect(faultsOf(cell, tally(35))).toEqual(['worth ABOVE 2.5 %']);
  // That of 80 % is 1.26 %.
  const power: Cell = { ...cell, bars: { least: { worth: 0.8 } } };
  expect(faultsOf(power, tally(775))).toEqual([]);
  expect(faultsOf(power, tally(774))).toEqual(['worth BELOW 80.0 %']);
});
