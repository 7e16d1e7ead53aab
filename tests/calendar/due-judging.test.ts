import { expect, test } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const lot = `
  lot L Iris alba, 60 seeds
  split L, A 24 seeds, B 24 seeds
  judge L 2026-01-11, on day 60
`;
const sown = `${lot}
  sow L/A 2026-01-11
  sow L/B 2026-01-12
`;
const judged = (source: string, now = '2026-03-14') => dueOf(source, now, 'judge');

test('a trial is due to be judged on the day that was named, with all batches to be counted', () => {
  // Day 60 of 2026-01-11: 20 days to the end of January, 28 of February, 12 of March.
  expect(itemsOf(sown, '2026-03-12', 'judge')[0]).toMatchObject({
    group: 'today', id: 'L', day: itemsOf(sown, '2026-01-12', 'judge')[0]!.day, what: 'judge the trial; count L/A and L/B that day', action: undefined,
  });
  expect(judged(sown, '2026-01-12')).toEqual(['later: 2026-03-12 judge L']);
});

test('it asks for the last count that is missing, and is done with it', () => {
  const one = `${sown}\n  count L/A 2026-03-12, 3`;
  expect(itemsOf(one, '2026-03-14', 'judge')[0]).toMatchObject({
    group: 'overdue', what: 'judge the trial; count L/B that day', action: 'count L/B 2026-03-14, ',
  });
  expect(judged(`${one}\n  count L/B 2026-03-14, 1`)).toEqual([]);
  expect(judged(`${one}\n  discard L/B 2026-02-14`)).toEqual([]);
});

test('a count before the day does not do, one after the week ends it', () => {
  expect(judged(`${sown}\n  count L/A 2026-03-11, 3\n  count L/B 2026-03-11, 3`)).toEqual(['overdue: 2026-03-12 judge L']);
  expect(judged(`${sown}\n  count L/A 2026-03-21, 3`, '2026-03-22')).toEqual([]);
});

test('nothing is due before seed is sown, nor for a day that was not named beforehand', () => {
  expect(judged(lot)).toEqual([]);
  expect(judged(`${sown}\n  count L/A 2026-01-11, 3\n  count L/B 2026-01-11, 3`)).toEqual([]);
});
