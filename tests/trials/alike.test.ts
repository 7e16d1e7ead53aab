import { expect, test } from 'vitest';
import { isAboutAsLong, isSameColdDay, isSameDay, isSameDose, isSameWarmth, mayBeSameLength } from '../../server/src/trials/alike.ts';

const exactly = (n: number) => ({ least: n, most: n });

test('doses are one up to a twentieth of the greater, whichever comes first', () => {
  const pairs = [[95, 100], [100, 95], [94, 100], [100, 94]] as const;
  expect(pairs.map(([a, b]) => isSameDose(a, b))).toEqual([true, true, false, false]);
});

test('soaks may be of one length up to a twentieth, and are about as long up to a fifth', () => {
  const pairs = [105, 106, 120, 121].flatMap(n => [[100, n], [n, 100]] as const);
  expect(pairs.filter(([a, b]) => mayBeSameLength(exactly(a), exactly(b)))).toEqual(pairs.slice(0, 2));
  expect(pairs.filter(([a, b]) => isAboutAsLong(exactly(a), exactly(b)))).toEqual(pairs.slice(0, 6));
  expect(mayBeSameLength({ least: 60, most: 100 }, exactly(70))).toBe(true);
  expect([mayBeSameLength(undefined, exactly(1)), mayBeSameLength(exactly(1), undefined)]).toEqual([true, true]);
});

test('days are one within three, however long ago', () => {
  const alike = [[0, 3], [13, 10], [-2, 1], [100, 97]] as const;
  const unlike = [[0, 4], [10, 14], [100, 96], [-50, -54]] as const;
  expect([...alike, ...unlike].filter(([a, b]) => isSameDay(a, b))).toEqual(alike);
});

test('cold before day 0 begins alike within a week, or a fifth of it', () => {
  const alike = [[-84, -77], [-77, -84], [-25, -20], [-10, -7], [-1, 2], [0, 3]] as const;
  const unlike = [[-84, -76], [-26, -20], [-20, -26], [-10, -6], [-1, 3], [50, 54]] as const;
  expect([...alike, ...unlike].filter(([a, b]) => isSameColdDay(a, b))).toEqual(alike);
});

test('warmth is one up to a degree', () => {
  const pairs = [[18, 19], [19, 18], [18, 19.1], [19.1, 18]] as const;
  expect(pairs.map(([a, b]) => isSameWarmth(a, b))).toEqual([true, true, false, false]);
});
