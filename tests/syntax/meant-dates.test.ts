import { describe, expect, test } from 'vitest';
import { meantMoment, meantMonth } from '../../server/src/syntax/meant-dates.ts';

describe('the moment that is meant by', () => {
  test.each([
    ['2026-1-9', '2026-01-09'], ['2026/01/09', '2026-01-09'], ['2026.1.9', '2026-01-09'], ['20260109', '2026-01-09'],
    ['9 Jan 2026', '2026-01-09'], ['9. January 2026', '2026-01-09'], ['9th jan. 2026', '2026-01-09'], ['Sept 9 2026', '2026-09-09'],
    ['2026-01-09T19:30', '2026-01-09 19:30'], ['2026-01-09 7 pm', '2026-01-09 19:00'], ['2026-1-9T7:30:15.5', '2026-01-09 07:30'],
    ['19.30', '19:30'], ['7h05', '07:05'], ['19h', '19:00'], ['7 pm', '19:00'], ['12 a.m.', '00:00'], ['12:15PM', '12:15'],
    ['7:30:15', '07:30'],
  ])('%s is %s', (text, moment) => {
    expect(meantMoment(text)).toBe(moment);
  });

  test.each([
    '2026-02-30', '31 February 2026', '9 Ja 2026', '9 market 2026', '1.2.2026', '3/4/2026', '2026', '930', '19', '13 pm', '0 am', '24h',
    '25:00', '7:60', '2026-01-09T19:30Z', '2026-01-09T19:30+01:00', 'tomorrow', '', '202601099', '2026-1/9',
  ])('%s is not known', text => {
    expect(meantMoment(text)).toBeUndefined();
  });
});

describe('the month that is meant by', () => {
  test.each([
    ['Sept 2025', '2025-09'], ['september 2025', '2025-09'], ['9/2025', '2025-09'], ['09.2025', '2025-09'], ['2025-9', '2025-09'],
    ['2025/12', '2025-12'], ['13/2025', undefined], ['autumn 2025', undefined], ['2025', undefined], ['Ma 2025', undefined],
  ])('%s is %s', (text, month) => {
    expect(meantMonth(text)).toBe(month);
  });
});
