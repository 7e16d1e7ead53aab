import { expect, test } from 'vitest';
import { isoMoment, laterOf, recordBelowDay, recordLine, recordWords, stageFacts, type Ask } from '../../server/src/calendar/ask.ts';
import { moment } from './helpers.ts';

const lift: Ask = { keyword: 'lift', subject: 'A', facts: undefined, timed: true };
const count: Ask = { keyword: 'count', subject: 'A', facts: '', timed: false };

test('the record that is asked for is written with its time where the time matters, else with its day', () => {
  const at = moment('2026-01-11 09:05');
  expect([lift, count].map(ask => recordLine(ask, at))).toEqual(['lift A 2026-01-11 09:05', 'count A 2026-01-11, ']);
  expect([lift, count].map(ask => recordBelowDay(ask, at))).toEqual(['lift A 09:05', 'count A, ']);
  expect(recordBelowDay(lift, moment('2026-01-11'))).toBe('lift A');
  expect([lift, count].map(recordWords)).toEqual(['lift A, with the present time', 'count A, …']);
  expect([at, moment('2026-01-11')].map(isoMoment)).toEqual(['2026-01-11T09:05', '2026-01-11']);
});

test('it is written at the present where that is later than what it is asked for', () => {
  const later = (due: string, now: string) => isoMoment(laterOf(moment(due), moment(now)));
  expect(later('2026-01-10', '2026-01-11 08:00')).toBe('2026-01-11T08:00');
  expect(later('2026-01-11', '2026-01-11 08:00')).toBe('2026-01-11T08:00');
  expect(later('2026-01-11 09:00', '2026-01-11 08:00')).toBe('2026-01-11T09:00');
  expect(later('2026-01-12', '2026-01-11 08:00')).toBe('2026-01-12');
});

test('a stage is written with what is known of it', () => {
  const four = { day: 4, night: undefined, unit: 'C' } as const;
  const long = { value: 90, unit: 'days' } as const;
  expect([stageFacts(four, long), stageFacts(four, undefined), stageFacts(undefined, long)]).toEqual(['4 C, 90 days', '4 C', '90 days']);
  expect(stageFacts(undefined, undefined)).toBeUndefined();
});
