/** A small cell of each kind; npm run simulate has all of them, with more lots. */
import { expect, test } from 'vitest';
import { faultsOf, run } from './cell.ts';
import { cells } from './core.ts';

const LOTS = 80;

test.each([
  'no effect, weekly, 24 of 50 %',
  'no effect, weekly, 3 days apart, 50 of 50 %',
  'no effect, alternate weeks, 50 of 50 %',
  'no effect, alternate weeks, untreated first, 50 of 50 %',
  'no effect, alternate fortnights of a month, 50 of 50 %',
  'no effect, days 14, 28 against 21, 35, 50 of 50 %',
  'peeking weekly, 50 of 80 %',
  'peeking weekly, judged on day 42, 24 of 50 %',
  'weak seedlings, 20 % leggy, then died, 50 of 80 %',
  'dishes, 4 of 12 seeds, rho 0.05',
  'three doses, 24 of 50 %',
  'three unlike treatments, 24 of 50 %',
  'five lots, 24 of 50 %',
  'gain from 20 to 70 %, 24 a side, closed',
  'gain from 20 to 50 %, 50 a side, closed',
  'loss from 60 to 40 %, 50 a side',
  'faster, 24 to 12 days, but 60 to 40 %, 50 a side',
  'messy, each side by a habit of its own',
  'messy, everything at once',
])('%s', name => {
  const cell = cells.find(each => each.name === name)!;
  const tally = run(cell, 1, 0, name.startsWith('peeking') ? LOTS / 4 : LOTS);
  expect(faultsOf(cell, tally), JSON.stringify(tally)).toEqual([]);
});
