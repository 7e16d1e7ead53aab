import { describe, expect, test } from 'vitest';
import { agoText, daySpanText, daysText } from '../../server/src/words/days.ts';
import { dayOfIso } from '../../server/src/model/day.ts';

const day = (iso: string) => dayOfIso(iso)!;

describe('how long ago a day was', () => {
  test.each([
    ['2026-03-25', 'today'],
    ['2026-03-24', 'yesterday'],
    ['2026-03-26', 'tomorrow'],
    ['2026-03-12', '13 days ago'],
    ['2026-03-11', '2 weeks ago'],
    ['2026-01-11', '10 weeks ago'],
    ['2026-06-03', 'in 10 weeks'],
    ['2025-11-26', '17 weeks ago'],
    // 120 days from here on.
    ['2025-11-25', '4 months ago'],
    ['2026-07-23', 'in 3 months'],
    ['2024-03-26', '23 months ago'],
    ['2024-03-25', '2 years ago'],
    ['2031-03-24', 'in 4 years'],
    ['2031-03-25', 'in 5 years'],
  ])('%s is %s from 2026-03-25', (iso, text) => {
    expect(agoText(day(iso), day('2026-03-25'))).toBe(text);
  });

  test('a month is over at its last day where it has fewer days than the month that began it', () => {
    expect(agoText(day('2025-10-31'), day('2026-02-28'))).toBe('4 months ago');
    expect(agoText(day('2025-10-31'), day('2026-02-27'))).toBe('17 weeks ago');
  });
});

test('one day is no days', () => {
  expect([0, 1, 2].map(daysText)).toEqual(['0 days', '1 day', '2 days']);
});

test('a date is as precise as it was written', () => {
  expect(daySpanText({ first: day('2025-09-14'), last: day('2025-09-14') })).toBe('2025-09-14');
  expect(daySpanText({ first: day('2025-02-01'), last: day('2025-02-28') })).toBe('2025-02');
  expect(daySpanText({ first: day('2025-01-01'), last: day('2025-01-31') })).toBe('2025-01');
  expect(daySpanText({ first: day('2025-01-01'), last: day('2025-12-31') })).toBe('2025');
});
