import { describe, expect, it } from 'vitest';
import { shelfLife } from '../../server/src/solutions/expiry.ts';

describe('the life of a stock', () => {
  const made = 1000;

  // Four years, of which one is a leap year.
  it.each([
    [0, 'good', 1461],
    [1430, 'good', 31],
    [1431, 'near', 30],
    [1461, 'near', 0],
    [1462, 'expired', -1],
  ])('after %s days of 1461 is %s', (age, state, daysLeft) => {
    expect(shelfLife(made + age, made, made + 1461)).toEqual({ state, daysLeft, age });
  });

  it.each([
    [12, 'good'],
    [13, 'near'],
    [14, 'near'],
    [15, 'expired'],
  ])('after %s days of 14 is %s: near is a tenth of a short time', (age, state) => {
    expect(shelfLife(made + age, made, made + 14).state).toBe(state);
  });
});
