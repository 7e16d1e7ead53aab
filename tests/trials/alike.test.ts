import { expect, test } from 'vitest';
import { isAboutAsLong, isSameDose, isSameStageDay, isSameWarmth, mayBeSameLength } from '../../server/src/trials/alike.ts';

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

test('stages begin alike within three days, or within a fifth of the later day, before day 0 too', () => {
  const alike = [[0, 3], [13, 10], [40, 50], [50, 40], [-50, -40]] as const;
  const unlike = [[0, 4], [10, 14], [40, 51], [51, 40], [-51, -40]] as const;
  expect([...alike, ...unlike].filter(([a, b]) => isSameStageDay(a, b))).toEqual(alike);
});

test('warmth is one up to a degree', () => {
  const pairs = [[18, 19], [19, 18], [18, 19.1], [19.1, 18]] as const;
  expect(pairs.map(([a, b]) => isSameWarmth(a, b))).toEqual([true, true, false, false]);
});
