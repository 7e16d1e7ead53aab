import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths, dayOf, dayOfIso, isoOf, weekdayOf } from '../../server/src/model/day.ts';

describe('the number of a day', () => {
  // Counted from 1970-01-01; the values are those of `date -u -d DATE +%s` of GNU coreutils, divided by 86400.
  test.each([
    [1970, 1, 1, 0], [1969, 12, 31, -1], [2000, 2, 29, 11016], [2026, 1, 19, 20472], [2100, 3, 1, 47541],
  ])('%i-%i-%i is %i', (year, month, day, number) => {
    expect(dayOf(year, month, day)).toBe(number);
  });

  test.each([
    [2026, 2, 29], [2100, 2, 29], [2026, 4, 31], [2026, 0, 1], [2026, 13, 1], [2026, 1, 0], [2026, 1, 32], [99, 1, 1],
    [2026, 1, -1],
  ])('%i-%i-%i has none', (year, month, day) => {
    expect(dayOf(year, month, day)).toBeUndefined();
  });

  test('is there for each day of a year and for no other date', () => {
    for (const year of [2024, 2025, 2100, 2000]) {
      const days = [];
      for (let month = 1; month <= 12; month++) {
        for (let date = 1; date <= 31; date++) days.push(dayOf(year, month, date) ?? []);
      }
      const found = days.flat();
      expect(found).toHaveLength((year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 366 : 365);
      expect(found).toEqual(found.map((_, index) => found[0]! + index));
    }
  });

  test('goes to its ISO date and back', () => {
    fc.assert(fc.property(fc.integer({ min: dayOf(100, 1, 1)!, max: dayOf(9999, 12, 31)! }), day => {
      expect(dayOfIso(isoOf(day))).toBe(day);
    }));
  });

  test('has its year in full where it lies beyond all that can be written', () => {
    expect(isoOf(dayOf(9999, 12, 31)! + 1)).toBe('+010000-01-01');
  });

  test.each(['2026-1-9', '2026-02-30', '2026-01-09T00:00', '', '20260109', ' 2026-01-09'])('%j is no ISO date of a day', iso => {
    expect(dayOfIso(iso)).toBeUndefined();
  });
});

// ISO 8601: 2000-01-01 was a Saturday. 1970-01-01 was a Thursday.
test.each([[2000, 1, 1, 'Saturday'], [1970, 1, 1, 'Thursday'], [2026, 1, 19, 'Monday'], [1969, 12, 31, 'Wednesday']])(
  '%i-%i-%i was a %4$s', (year, month, day, name) => {
    expect(weekdayOf(dayOf(year, month, day)!)).toBe(name);
  });

describe('some months later', () => {
  test.each([
    ['2026-01-31', 1, '2026-02-28'], ['2024-01-31', 1, '2024-02-29'], ['2026-01-15', 12, '2027-01-15'], ['2024-02-29', 48, '2028-02-29'],
    ['2024-02-29', 12, '2025-02-28'], ['2026-10-31', 4, '2027-02-28'], ['2026-03-31', -1, '2026-02-28'],
  ])('than %s by %i is %s', (from, months, to) => {
    expect(isoOf(addMonths(dayOfIso(from)!, months))).toBe(to);
  });
});
