import { describe, expect, test } from 'vitest';
import {
  dayOfSeed, germinationSpan, t50Coolbear, timeOfGerminated, timeOfSown,
} from '../../server/src/measures/germination-time.ts';
import { course, COURSES, expectClose, known, valueOf } from './helpers.ts';

const { D1, D2, D3, D4, D5 } = COURSES;

// Worked out as exact fractions from the formulas, apart from this code.
describe('times to germination', () => {
  test.each([['D1', D1, 79 / 12], ['D2', D2, 65 / 8], ['D3', D3, 9], ['D4', D4, 37 / 8], ['D5', D5, 6.2]] as const)(
    'T50 of Coolbear by (G + 1) / 2: %s', (_, of, wanted) => expectClose(valueOf(t50Coolbear(of)), wanted));

  test.each([['D1', D1, 6.5], ['D2', D2, 8], ['D3', D3, 7.5], ['D4', D4, 4.5], ['D5', D5, 6]] as const)(
    'T50 of Farooq by G / 2: %s', (_, of, wanted) => expectClose(valueOf(timeOfGerminated(of, 0.5)), wanted));

  test.each([['D1', D1, 83 / 12], ['D2', D2, 9], ['D4', D4, 4.5], ['D5', D5, 6.4]] as const)(
    'T50 of the seed sown: %s', (_, of, wanted) => expectClose(valueOf(timeOfSown(of, 0.5)), wanted));

  test.each([
    ['D1', D1, 5, 8.5], ['D2', D2, 227 / 45, 13.2], ['D3', D3, 6.3, 8.7], ['D4', D4, 3.3, 5.7], ['D5', D5, 2.4, 142 / 15],
  ] as const)('T10 and T90 of the germinated: %s', (_, of, t10, t90) => {
    expectClose(valueOf(timeOfGerminated(of, 0.1)), t10);
    expectClose(valueOf(timeOfGerminated(of, 0.9)), t90);
  });

  test('are undefined for half of the seed sown where fewer than half came up', () => {
    expect(timeOfSown(D3, 0.5)).toEqual({ undefined: 'fewer than 50 % of the seed sown germinated' });
  });

  test('are undefined where nothing germinated, never 0', () => {
    const nothing = course(10, '', [5, 10]);
    for (const time of [t50Coolbear(nothing), timeOfGerminated(nothing, 0.5), timeOfSown(nothing, 0.5)]) {
      expect(time).toEqual({ undefined: 'nothing germinated' });
    }
    expect(germinationSpan(nothing)).toEqual({ undefined: 'nothing germinated' });
  });

  test('are the day of the check that found exactly the number', () => {
    expect(dayOfSeed(D2, 12)).toEqual({ value: 7, after: { value: 5 }, by: 7 });
  });

  test('come with the checks between which the seed germinated', () => {
    expect(known(t50Coolbear(D2))).toMatchObject({ after: { value: 7 }, by: 10 });
    expect(known(timeOfGerminated(D5, 0.1))).toMatchObject({ after: { value: 0 }, by: 4 });
  });

  test('stay on that day when a share of the seeds is rounded upwards', () => {
    // 0.1 + 0.2 of ten seeds is 3.0000000000000004; the count stood at 3 from day 5 to day 20.
    expect(valueOf(timeOfGerminated(course(10, '5:3 21:7', [20]), 0.1 + 0.2))).toBe(5);
  });

  test('before the first check are not made up for seed that came up before day 0', () => {
    const early = course(10, '-4:4 6:4');
    expect(timeOfGerminated(early, 0.25)).toEqual({ undefined: 'it was reached before the first check, on day -4' });
    expect(timeOfGerminated(early, 0.5)).toMatchObject({ value: -4, by: -4 });
    expect(valueOf(timeOfGerminated(early, 0.75))).toBe(1);
  });

  test.each([['D1', D1, 5, 11], ['D2', D2, 5, 21], ['D3', D3, 9, 9], ['D5', D5, 4, 14]] as const)(
    'span from the first to the last check with germination: %s', (_, of, first, last) => {
      expect(germinationSpan(of)).toMatchObject({ first, last });
    });
});
