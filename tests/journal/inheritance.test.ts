import { describe, expect, test } from 'vitest';
import { batchOf, when } from './helpers.ts';

describe('what a batch takes along', () => {
  const stages = (source: string, path: string) => (
    batchOf(source, path).stages.map(({ start, end }) => [when(start), when(end)]));

  test('is a stage that goes on, though the batch was divided by a record without a date', () => {
    expect(stages(`
      lot L Iris alba, 20 seeds
      chill L 2026-01-01, 4 C, 90 days
      split L 2026-02-01, A 10 seeds
      split L/A, 1 5 seeds
      sow L/A 2026-03-01
    `, 'L/A')).toEqual([['2026-01-01', '2026-03-01']]);
  });

  test('is a treatment of sown seed, which may then be sown again', () => {
    const { events, sown } = batchOf(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      soak L 2026-03-01 19:00, water, 24 h
      split L 2026-03-02 19:00, A 10 seeds
      sow L/A 2026-03-02 19:30
    `, 'L/A');
    expect(events).toMatchObject([{ type: 'sow', again: true, available: 10 }]);
    expect(sown).toBe(10);
  });

  test('was over where something is dated before it was split off', () => {
    expect(stages(`
      lot L Iris alba, 20 seeds
      chill L 2026-01-01, 4 C, 90 days
      count L/A 2026-01-20, 0
      split L 2026-02-01, A 10 seeds
    `, 'L/A')).toEqual([['2026-01-01', '2026-01-20']]);
  });
});
