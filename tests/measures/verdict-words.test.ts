import { expect, test } from 'vitest';
import { dayText, daysBetween, limitsText, limitText, percent, pointsText, probability, ratio, wholePercent } from '../../server/src/measures/verdict-words.ts';

test('a difference is in points, one of them in the singular', () => {
  expect([0.24, 0.014, 0.0149, 0.016, 0].map(pointsText)).toEqual(['24 points', '1 point', '1 point', '2 points', '0 points']);
});

test('a half goes away from nothing on either side, and no last digit that is lost changes that', () => {
  const shares = [0.375, -0.375, 5 / 24 - 14 / 24, -0.0049];
  expect(shares.map(share => `${wholePercent(share)}`)).toEqual(['38', '-38', '-38', '0']);
  const sizes = Array.from({ length: 200 }, (_, i) => i + 1);
  const all = sizes.flatMap(n => Array.from({ length: n + 1 }, (_, x) => ({ x, n })));
  // In whole numbers, of which no digit is lost.
  const wrong = all.filter(({ x, n }) => wholePercent(x / n) !== Math.floor((200 * x + n) / (2 * n)));
  expect(wrong).toEqual([]);
  expect([percent(23 / 40), pointsText(23 / 40), limitsText({ low: -0.375, high: 0.575 })]).toEqual(['58 %', '58 points', '-38 to 58']);
});

test('a limit is told as the interval shows it', () => {
  expect([0.294, 0.295, 0.004, 0.0112].map(limitText)).toEqual(['29 points', '30 points', '0.4 points', '1 point']);
});

test('an interval that rounds to nothing keeps a decimal, so that one sees on which side of nothing it ends', () => {
  expect(limitsText({ low: 0.0042, high: 0.31 })).toBe('0.4 to 31');
  expect(limitsText({ low: -0.0042, high: 0.0049 })).toBe('-0.4 to 0.5');
});

test('a p-value has two digits, and is never told as nothing', () => {
  expect([0.05, 0.0123, 0.001, 0.000999, 0].map(probability)).toEqual(['0.050', '0.012', '0.0010', 'below 0.001', 'below 0.001']);
});

test('a ratio has two digits, and whole numbers from ten on', () => {
  expect([0.123, 1, 9.94, 10, 123.4].map(ratio)).toEqual(['0.12', '1.0', '9.9', '10', '123']);
});

test('a day lies between two looks, before day 0 too, and that it is after day 0 takes no look', () => {
  expect(dayText({ after: 21, by: 28 })).toBe('day 21 to 28');
  expect(dayText({ after: 1, by: 28 })).toBe('day 1 to 28');
  expect(dayText({ after: -56, by: -24 })).toBe('day -56 to -24');
  expect(dayText({ after: -3, by: 86 })).toBe('day -3 to 86');
  expect(dayText({ after: undefined, by: -24 })).toBe('before day -24');
  for (const after of [0, undefined]) expect(dayText({ after, by: 86 })).toBe('before day 86');
});

test('days between two limits are rounded away from each other, and a last digit that is lost changes nothing', () => {
  expect(daysBetween(4.2, 9.3)).toBe('4 to 10');
  expect(daysBetween(0, 86)).toBe('up to 86');
  expect(daysBetween(undefined, 86)).toBe('up to 86');
  expect(daysBetween(0.9, 86)).toBe('up to 86');
  expect(daysBetween(-33, 48)).toBe('-33 to 48');
  expect(daysBetween(-56, -24)).toBe('-56 to -24');
  expect(daysBetween(undefined, -24)).toBe('up to -24');
  expect(daysBetween(4, 4)).toBe('4');
  // 0.1 + 0.2 is more than 0.3, and 0.7 x 10 / 7 less than 1.
  expect(daysBetween(3 - 4e-16, 5 + 9e-16)).toBe('3 to 5');
});
