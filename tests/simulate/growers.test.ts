/** A small part of what npm run simulate has: who follows the advice fares no worse than those who do not look. */
import { expect, test } from 'vitest';
import { growers, harvestFaults, harvestRows, runGrowers } from './growers.ts';

test('over plants that it helps, harms and leaves alone, growers who follow the advice have most seedlings', () => {
  const cell = growers.find(({ seeds }) => seeds === 24)!;
  const rows = harvestRows([runGrowers(cell, 1, 0, 25)]);
  expect(harvestFaults(rows), JSON.stringify(rows)).toEqual([]);
  const { helped, harmed } = rows;
  // Where it pays they do better than who never treats, where it harms than who always does.
  expect(helped['follows the advice'].mean).toBeGreaterThan(helped['never treats'].mean + 10);
  expect(harmed['follows the advice'].mean).toBeGreaterThan(harmed['always treats'].mean + 10);
});
