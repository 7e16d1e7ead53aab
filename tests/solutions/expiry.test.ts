import { describe, expect, it } from 'vitest';
import { NEAR_DAYS, shelfLife } from '../../server/src/solutions/expiry.ts';

describe('the life of a stock', () => {
  const made = 1000;
  const end = made + 1461;

  it.each([
    [made, 'good', 1461, 0],
    [end - NEAR_DAYS - 1, 'good', NEAR_DAYS + 1, 1461 - NEAR_DAYS - 1],
    [end - NEAR_DAYS, 'near', NEAR_DAYS, 1461 - NEAR_DAYS],
    [end, 'near', 0, 1461],
    [end + 1, 'expired', -1, 1462],
  ])('on day %s is %s', (today, state, daysLeft, age) => {
    expect(shelfLife(today, end, made)).toEqual({ state, daysLeft, age });
  });

  it('has no age where the day it was made is not known', () => {
    expect(shelfLife(10, 20).age).toBeUndefined();
  });
});
