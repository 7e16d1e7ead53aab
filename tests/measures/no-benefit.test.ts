import { expect, test } from 'vitest';
import { compare } from '../../server/src/measures/comparison.ts';
import { hasNoBenefit, isTooSoon } from '../../server/src/measures/no-benefit.ts';
import { course, known } from './helpers.ts';

/** One lot: so many germinated of so many on both sides, by a day. */
const lot = (treated: number, untreated: number, n: number, day = 40) => (
  known(compare([course(n, treated > 0 ? `${day}:${treated}` : '', [day])], [course(n, untreated > 0 ? `${day}:${untreated}` : '', [day])])));

test('a lot in which nothing had its time does not make up for one that cannot tell', () => {
  const [empty, unsure] = [lot(0, 0, 30, 14), lot(21, 16, 30)];
  expect(isTooSoon([empty])).toBe(true);
  expect([hasNoBenefit([empty]), hasNoBenefit([unsure]), hasNoBenefit([empty, unsure])]).toEqual([false, false, false]);
  // Watched for half a year, it counts.
  expect(hasNoBenefit([lot(0, 0, 30, 200), unsure])).toBe(true);
});

test('few seeds in each of several winters add up', () => {
  const winters = Array.from({ length: 8 }, () => lot(1, 1, 6));
  expect(isTooSoon(winters.slice(0, 1))).toBe(true);
  expect(isTooSoon(winters)).toBe(false);
  expect(hasNoBenefit(winters)).toBe(true);
});
