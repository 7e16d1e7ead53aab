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

test('it names no batch before its own day, nor the day of those that were counted', () => {
  const late = sown.replace('L/B 2026-01-12', 'L/B 2026-01-29');
  expect(itemsOf(late, '2026-03-12', 'judge')[0]).toMatchObject({ group: 'today', what: 'judge the trial; count L/A that day' });
  // Day 60 of 2026-01-29: 2 days of January, 28 of February, 30 of March.
  expect(judged(`${late}\n  count L/A 2026-03-12, 3`, '2026-03-14')).toEqual(['later: 2026-03-30 judge L']);
});

test('it asks for the last count that is missing, and is done with it', () => {
  const one = `${sown}\n  count L/A 2026-03-12, 3`;
  expect(itemsOf(one, '2026-03-14 10:00', 'judge')[0]).toMatchObject({
    group: 'overdue', what: 'judge the trial; count L/B that day', action: 'count L/B 2026-03-14, ',
  });
  expect(judged(`${one}\n  count L/B 2026-03-14, 1`)).toEqual([]);
  expect(judged(`${one}\n  discard L/B 2026-02-14`)).toEqual([]);
});

test('the day that was named first holds, whether for the whole lot or for a part of it', () => {
  // Day 60 of A is 12 March. Day 90 of B, from 12 January: 19 days of January, 28, 31, and 12 of April.
  expect(judged(`${sown}\n  judge L/B 2026-01-13, on day 90`)).toEqual(['overdue: 2026-03-12 judge L']);
  // The record of 2 January is about an earlier sowing.
  expect(judged(`${sown}\n  judge L 2026-01-02, on 2026-01-12`)).toEqual(['overdue: 2026-03-12 judge L']);
  expect(judged(`${sown}\n  judge L/B 2026-01-10, on day 90`)).toEqual(['overdue: 2026-03-12 judge L', 'later: 2026-04-12 judge L/B']);
});

test('a count before the day does not do, one after the week ends it', () => {
  expect(judged(`${sown}\n  count L/A 2026-03-11, 3\n  count L/B 2026-03-11, 3`)).toEqual(['overdue: 2026-03-12 judge L']);
  expect(judged(`${sown}\n  count L/A 2026-03-21, 3`, '2026-03-22')).toEqual([]);
});

test('nothing is due before seed is sown, nor for a day that was not named beforehand', () => {
  expect(judged(lot)).toEqual([]);
  for (const seen of ['3', '1 rotted']) {
    expect(judged(`${sown}\n  count L/A 2026-01-11, ${seen}\n  count L/B 2026-01-11, ${seen}`), seen).toEqual([]);
  }
});

test('batches whose sowings lie three days apart are judged together, so what was seen of one was seen of all', () => {
  const apart = (second: string) => judged(`
    lot L Iris alba, 60 seeds
    split L, A 24 seeds, B 24 seeds
    sow L/A 2026-01-11
    sow L/B ${second}
    count L/A 2026-01-19, 3
    judge L 2026-01-20, on 2026-03-12`);
  expect(apart('2026-01-14')).toEqual([]);
  expect(apart('2026-01-15')).toEqual(['overdue: 2026-03-12 judge L']);
});

test('four batches are named, of more it says how many', () => {
  const said = (...ids: string[]) => itemsOf(['lot L Iris alba', `split L, ${ids.map(id => `${id} 5 seeds`).join(', ')}`,
    'judge L 2026-01-11, on day 60', ...ids.map(id => `sow L/${id} 2026-01-11`)].join('\n'), '2026-02-01', 'judge')[0]?.what;
  expect(said('A', 'B', 'C', 'D')).toBe('judge the trial; count L/A, L/B, L/C and L/D that day');
  expect(said('A', 'B', 'C', 'D', 'E')).toBe('judge the trial; count all 5 batches that day');
});
