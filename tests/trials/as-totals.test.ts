import { describe, expect, test } from 'vitest';
import { contest } from './helpers.ts';

describe('counts that read like totals', () => {
  const counted = (a: readonly string[], b: readonly string[]) => contest(`
    lot L Iris alba, 60 seeds
    split L, A 24 seeds, B 24 seeds
    soak L/A 2026-01-10, GA3 500 ppm, 24 h
    soak L/B 2026-01-10, water, 24 h
    sow L/A 2026-01-11
    sow L/B 2026-01-11
    ${a.map((n, i) => `count L/A 2026-02-0${i + 1}, ${n}`).join('\n    ')}
    ${b.map((n, i) => `count L/B 2026-02-0${i + 1}, ${n}`).join('\n    ')}
  `).remarks.filter(remark => remark.includes('totals'));

  test('are told beside the verdict', () => {
    expect(counted(['2', '5', '8', '9'], ['3', '2', '2', '1'])).toEqual([
      'the counts of L/A look like totals so far: if they are, put “=” before each number, and read the verdict again',
    ]);
    expect(counted(['4', '6', '8'], ['3', '2', '2', '1'])).toHaveLength(1);
    expect(counted(['4', '6', '5'], ['3', '2', '2', '1'])).toEqual([]);
    // 15 of 24 are less than two thirds.
    expect(counted(['4', '5', '6'], ['3', '2', '2', '1'])).toEqual([]);
    expect(counted(['=2', '=5', '=8', '=9'], ['3', '2', '2', '1'])).toEqual([]);
  });
});
