import { describe, expect, test } from 'vitest';
import { epicotylDelay } from '../../server/src/measures/epicotyl.ts';
import { known } from './helpers.ts';

const checks = [
  { day: 20, germinated: 0 }, { day: 30, germinated: 2 }, { day: 90, germinated: 3 },
  { day: 100, germinated: 3, leaf: 1 }, { day: 120, germinated: 3, leaf: 2, died: 1 },
];

describe('the epicotyl delay', () => {
  test('is the mean wait from radicle to first leaf, with its bounds', () => {
    // Two seedlings: both germinated between day 20 and 30; leaves came in (90, 100] and (100, 120].
    expect(epicotylDelay({ sown: 5, checks })).toEqual({
      leafed: 2, waiting: 0, mean: 80, longest: { value: 90 }, shortest: { value: 65 },
    });
  });

  test('counts as waiting the seedlings that live and have no leaf', () => {
    const early = known(epicotylDelay({ sown: 5, checks: checks.slice(0, 4) }));
    expect(early).toMatchObject({ leafed: 1, waiting: 2, mean: 70 });
  });

  test('is at least 0: radicle and leaf may have come on one day', () => {
    const together = [{ day: 10, germinated: 0 }, { day: 20, germinated: 2, leaf: 2 }];
    expect(known(epicotylDelay({ sown: 5, checks: together }))).toMatchObject({
      mean: 0, shortest: { value: 0 }, longest: { value: 10 },
    });
  });

  test('has no upper bound for seed that was up at the first check, before day 0', () => {
    const early = [{ day: -5, germinated: 1 }, { day: 40, germinated: 1, leaf: 1 }];
    expect(known(epicotylDelay({ sown: 5, checks: early }))).toMatchObject({
      mean: 45, longest: { undefined: 'no check before the first germination' }, shortest: { value: 0 },
    });
  });

  test('is undefined until a leaf was counted', () => {
    expect(epicotylDelay({ sown: 5, checks: checks.slice(0, 3) })).toEqual({ undefined: 'no first leaf was counted' });
    expect(epicotylDelay({ sown: 5, checks: [{ day: 9, germinated: 1, leaf: 2 }] })).toHaveProperty('undefined');
  });
});
