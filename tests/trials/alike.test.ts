import { expect, test } from 'vitest';
import { isAboutAsLong, isSameDose, isSameStageDay, isSameWarmth, mayBeSameLength } from '../../server/src/trials/alike.ts';

const exactly = (n: number) => ({ least: n, most: n });

test('doses are one up to a twentieth of the greater, whichever comes first', () => {
  expect([isSameDose(95, 100), isSameDose(100, 95), isSameDose(94, 100), isSameDose(100, 94)]).toEqual([true, true, false, false]);
});

test('soaks may be of one length up to a twentieth, and are about as long up to a fifth', () => {
  const pairs = [[100, 105], [105, 100], [100, 106], [106, 100], [100, 120], [120, 100], [100, 121], [121, 100]] as const;
  expect(pairs.map(([a, b]) => mayBeSameLength(exactly(a), exactly(b)))).toEqual([true, true, ...Array.from({ length: 6 }, () => false)]);
  expect(pairs.map(([a, b]) => isAboutAsLong(exactly(a), exactly(b)))).toEqual([...Array.from({ length: 6 }, () => true), false, false]);
  expect(mayBeSameLength({ least: 60, most: 100 }, exactly(70))).toBe(true);
  expect([mayBeSameLength(undefined, exactly(1)), mayBeSameLength(exactly(1), undefined)]).toEqual([true, true]);
});

test('stages begin alike within three days, or within a fifth of the later day, before day 0 too', () => {
  const alike = [[0, 3], [13, 10], [40, 50], [50, 40], [-50, -40]] as const;
  const unlike = [[0, 4], [10, 14], [40, 51], [51, 40], [-51, -40]] as const;
  expect([...alike, ...unlike].filter(([a, b]) => isSameStageDay(a, b))).toEqual(alike);
});

test('warmth is one up to a degree', () => {
  expect([isSameWarmth(18, 19), isSameWarmth(19, 18), isSameWarmth(18, 19.1), isSameWarmth(19.1, 18)]).toEqual([true, true, false, false]);
});
