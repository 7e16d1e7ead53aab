import { expect, test } from 'vitest';
import { dayOf, isoOf } from '../../server/src/model/day.ts';
import { winterNamed, winterOf } from '../../server/src/model/winter.ts';

const spanOf = (text: string) => {
  const winter = winterNamed(text);
  return winter && [winter.name, isoOf(winter.first), isoOf(winter.last)];
};

test('a winter runs over the turn of the year, a year by itself from end to end', () => {
  expect(spanOf('2025/26')).toEqual(['2025/26', '2025-07-01', '2026-06-30']);
  expect(spanOf('2025-26')).toEqual(spanOf('2025/26'));
  expect(spanOf('2025/2026')).toEqual(spanOf('2025/26'));
  expect(spanOf('1999/00')).toEqual(['1999/00', '1999-07-01', '2000-06-30']);
  expect(spanOf('2026')).toEqual(['2026', '2026-01-01', '2026-12-31']);
});

test('one winter ends where the next one begins', () => {
  for (let year = 1990; year < 2040; year++) {
    const [one, next] = [year, year + 1].map(each => winterNamed(`${each}/${String(each + 1).slice(2)}`)!);
    expect(next!.first).toBe(one!.last + 1);
  }
});

test('what names no winter is none', () => {
  for (const text of ['', '25/26', '2025/27', '2026/25', '2025/6', 'winter', '2025/26/27', '0000']) {
    expect(winterNamed(text)).toBeUndefined();
  }
});

test('every day is in the winter that it is said to be in, north and south', () => {
  for (const zone of [undefined, 'Europe/Vienna', 'Africa/Johannesburg']) {
    for (let day = dayOf(2023, 12, 1)!; day < dayOf(2026, 2, 1)!; day++) {
      const { first, last } = winterNamed(winterOf(day, zone))!;
      expect(first <= day && day <= last, isoOf(day)).toBe(true);
    }
  }
  expect(winterOf(dayOf(2026, 7, 11)!, 'Europe/Vienna')).toBe('2026/27');
  expect(winterOf(dayOf(2026, 7, 11)!, 'Africa/Johannesburg')).toBe('2026');
});
