import { describe, expect, test } from 'vitest';
import { germinatedAt, germinatedOf, germinationDays, originText } from '../../server/src/words/germination.ts';
import { countsOf, type Batch } from '../../server/src/journal/life.ts';
import { readFixture } from '../support/fixture.ts';
import { journalOf } from '../features/journals.ts';

function batchOf(lines: string, lot = 'lot X Primula japonica, 30 seeds'): Batch {
  return journalOf(readFixture(`${lot}\n${lines}`)).lot('X')!.root;
}

describe('what germinated', () => {
  test('is a share of the seed sown less lost', () => {
    expect(germinatedOf(batchOf('sow X 2026-01-01, 24 seeds\ncount X 2026-01-10, 3, 2 lost\ncount X 2026-01-20, 6')))
      .toEqual({ x: 9, n: 22, of: '24 sown less 2 lost' });
  });

  test('is a share of the seed that is there where none was sown', () => {
    expect(germinatedOf(batchOf('chill X 2026-01-01, 4 C\ncount X 2026-02-01, 3'))).toEqual({ x: 3, n: 30, of: '30 seeds, not sown' });
  });

  test.each([
    ['it was not counted', 'sow X 2026-01-01', undefined, 'not counted yet'],
    ['nobody wrote how many', 'sow X 2026-01-01\ncount X 2026-01-10, 3', 'lot X Primula japonica', 'the number of seeds is unknown'],
    ['more are counted than sown', 'sow X 2026-01-01, 10 seeds\ncount X 2026-01-10, 9, 3 rotted', undefined, 'more are counted (12) than there are seeds (10)'],
    ['all were lost', 'sow X 2026-01-01, 10 seeds\ncount X 2026-01-10, 10 lost', undefined, 'there are no seeds to take a percentage of'],
    [
      'seed was picked out while it was counted', 'sow X 2026-01-01\ncount X 2026-01-10, 3\nsplit X 2026-01-11, A 10 seeds\ncount X 2026-01-20, 3',
      undefined, 'seed that had not germinated was split off after counting began',
    ],
    [
      'seed was given away while it was counted', 'sow X 2026-01-01\ncount X 2026-01-10, 3\ngive X 2026-01-11, 10 seeds\ncount X 2026-01-20, 3',
      undefined, 'seed that had not germinated was given away after counting began',
    ],
    [
      'seed of an estimate was sent and split off while it was counted',
      'sow X 2026-01-01\ncount X 2026-01-10, 3\nsend X 2026-01-11, 4 seeds, to a friend\nsplit X 2026-01-12, A 4 seeds\ncount X 2026-01-20, 3',
      'lot X Primula japonica, about 30 seeds', 'seed that had not germinated was sent and split off after counting began',
    ],
  ])('is no share where %s', (_, lines, lot, reason) => {
    expect(germinatedOf(batchOf(lines, lot))).toEqual({ undefined: reason });
  });

  test('after each count is of the seed that was there then', () => {
    const batch = batchOf(`sow X 2026-01-01, 10 seeds
count X 2026-01-10, 2
sow X 2026-01-15, 20 seeds
count X 2026-01-20, 4, 1 lost`);
    expect(countsOf(batch).map(count => germinatedAt(batch, count))).toEqual([
      { x: 2, n: 10, of: '10 sown' }, { x: 6, n: 29, of: '30 sown less 1 lost' },
    ]);
  });

  test('before seed was picked out is still a share', () => {
    const batch = batchOf('sow X 2026-01-01\ncount X 2026-01-10, 3\nsplit X 2026-01-11, A 10 seeds\ncount X 2026-01-20, 3');
    expect(germinatedAt(batch, countsOf(batch)[0]!)).toEqual({ x: 3, n: 30, of: '30 sown' });
  });
});

describe('the days of germination', () => {
  test('are those of the counts that saw something new, from day 0', () => {
    const batch = batchOf('sow X 2026-01-01\ncount X 2026-01-10, 0\ncount X 2026-01-20, 3\ncount X 2026-01-30, 1\ncount X 2026-02-10, 0, 1 rotted');
    expect(germinationDays(batch)).toEqual({ first: 19, last: 29 });
    expect(originText(batch.origin!)).toBe('the sowing on 2026-01-01');
  });

  test.each([
    ['it was not counted', 'sow X 2026-01-01', 'not counted yet'],
    ['nothing came', 'sow X 2026-01-01\ncount X 2026-01-10, 0', 'none seen yet'],
    ['there is no day 0', 'count X 2026-01-10, 3', 'no day 0: not yet sown, soaked or in a stage'],
  ])('are none where %s', (_, lines, reason) => {
    expect(germinationDays(batchOf(lines))).toEqual({ undefined: reason });
  });

  test('count from the end of the soak where nothing was sown', () => {
    const batch = batchOf('soak X 2026-01-01 19:00, water, 24 h\ncount X 2026-01-10, 3');
    expect(germinationDays(batch)).toEqual({ first: 8, last: 8 });
    expect(originText(batch.origin!)).toBe('the end of the soak on 2026-01-02');
  });
});
