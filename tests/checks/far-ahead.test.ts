import { expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

test('a sowing more than 400 days ahead is asked about, once for its day', () => {
  expectMarked(['far-ahead'], `
    lot L Gentiana lutea, 40 seeds
    sow L 2062-01-11, 20 seeds
          ^^^^^^^^^^ far-ahead
    chill L 2062-01-11, 4 C
    lot M Gentiana lutea, 40 seeds
    sow M 2026-12-11
    due M 2030-01-01, give it up
  `, { now: '2026-01-10' });
});

test('the message names the day in this year and in the next', () => {
  const [problem] = problemsIn('far-ahead', 'lot L Gentiana lutea\nsow L 2062-01-11', { now: '2026-01-10' });
  // 36 years, of which 2028, 2032, ... 2060 are nine leap years: 36 * 365 + 9 + 1 day.
  expect(problem!.message).toBe('“sow” of L is dated 2062-01-11, 13150 days from now. Is the year right? It may be 2026-01-11 or 2027-01-11.');
});

test('a day that is itself in the next year is not offered in its own place', () => {
  const [problem] = problemsIn('far-ahead', 'lot L Gentiana lutea\nsow L 2027-04-06', { now: '2026-03-01' });
  expect(problem!.message).toBe('“sow” of L is dated 2027-04-06, 401 days from now. Is the year right? It may be 2026-04-06.');
});
