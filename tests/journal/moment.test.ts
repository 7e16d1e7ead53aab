import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { after, elapsed, instantIn, isBefore, isOver, lengthText, printMoment } from '../../server/src/journal/moment.ts';
import { at } from './helpers.ts';

const length = (from: string, to: string, zone?: string) => {
  const { least, most } = elapsed(at(from), at(to), zone);
  return least === most ? least : [least, most];
};

describe('a moment is over', () => {
  const over = (moment: string, now: string, zone?: string) => isOver(at(moment), at(now), zone);

  test.each([undefined, 'Europe/Vienna'])('once a later one has come, in zone %s', zone => {
    expect(over('2026-01-10 19:00', '2026-01-10 19:01', zone)).toBe(true);
    expect(over('2026-01-10 19:00', '2026-01-10 19:00', zone)).toBe(false);
    expect(over('2026-01-10 19:00', '2026-01-10 18:59', zone)).toBe(false);
    // Where a time of day is missing, only the day tells.
    expect([over('2026-01-10', '2026-01-10 23:59', zone), over('2026-01-10', '2026-01-11', zone)]).toEqual([false, true]);
    expect([over('2026-01-10 00:01', '2026-01-10', zone), over('2026-01-10 23:59', '2026-01-11', zone)]).toEqual([false, true]);
  });
});

describe('the time from one moment to another', () => {
  // Check values computed with the zoneinfo of Python 3.11.
  test.each([
    ['2026-01-10 19:00', '2026-01-11 19:00', 'Europe/Vienna', 1440],
    ['2026-03-28 19:00', '2026-03-29 19:00', 'Europe/Vienna', 1380],
    ['2026-10-24 19:00', '2026-10-25 19:00', 'Europe/Vienna', 1500],
    ['2026-09-05 12:00', '2026-09-06 12:00', 'America/Santiago', 1380],
    ['2026-04-04 12:00', '2026-04-05 12:00', 'America/Santiago', 1500],
    ['2026-03-07 20:00', '2026-03-08 20:00', 'America/New_York', 1380],
    ['2026-04-04 12:00', '2026-04-05 12:00', 'Australia/Lord_Howe', 1470],
    ['2026-10-03 12:00', '2026-10-04 12:00', 'Australia/Lord_Howe', 1410],
    ['2026-03-28 23:30', '2026-03-29 02:30', 'Europe/London', 120],
    ['2026-10-24 23:30', '2026-10-25 03:30', 'Europe/Dublin', 300],
    ['2026-02-14 12:00', '2026-02-15 12:00', 'Africa/Casablanca', 1500],
  ])('from %s to %s in %s is %d minutes', (from, to, zone, minutes) => {
    expect(length(from, to, zone)).toBe(minutes);
    expect(elapsed(at(from), at(to), zone).wallClock).toBe(false);
  });

  test('is that of the clock on the wall without a zone, and says so', () => {
    expect(elapsed(at('2026-03-28 19:00'), at('2026-03-29 19:00'), undefined)).toEqual({ least: 1440, most: 1440, wallClock: true });
  });

  test('is open where a time of day is not written: any of the day', () => {
    expect(length('2026-01-10', '2026-01-11')).toEqual([0, 2880]);
    expect(length('2026-01-10 19:00', '2026-01-11')).toEqual([300, 1740]);
    expect(length('2026-01-10', '2026-01-11 19:00')).toEqual([1140, 2580]);
    expect(length('2026-03-28', '2026-03-30', 'Europe/Vienna')).toEqual([1380, 4260]);
    expect(length('2026-01-10', '2026-01-10')).toEqual([0, 1440]);
  });

  test('is open by an hour where the clock showed a time twice', () => {
    expect(length('2026-10-24 19:00', '2026-10-25 02:30', 'Europe/Vienna')).toEqual([450, 510]);
  });

  test('is never less than nothing', () => {
    expect(length('2026-01-11 19:00', '2026-01-10 19:00')).toBe(0);
  });
});

const later = (from: string, value: number, unit: 'min' | 'h' | 'days' | 'weeks' | 'months', zone?: string) =>
  printMoment(after(at(from), { value, unit }, zone));

describe('the moment a while after another', () => {
  // Check values computed with the zoneinfo of Python 3.11.
  test.each([
    ['2026-03-28 19:00', 24, 'Europe/Vienna', '2026-03-29 20:00'],
    ['2026-10-24 19:00', 24, 'Europe/Vienna', '2026-10-25 18:00'],
    ['2026-09-05 23:00', 2, 'America/Santiago', '2026-09-06 02:00'],
    ['2026-04-04 22:30', 2, 'America/Santiago', '2026-04-04 23:30'],
    ['2026-10-25 00:30', 2.5, 'Europe/Vienna', '2026-10-25 02:00'],
  ])('%s and %d h in %s is %s', (from, hours, zone, to) => {
    expect(later(from, hours, 'h', zone)).toBe(to);
  });

  test('is counted by the clock on the wall without a zone', () => {
    expect(later('2026-03-28 19:00', 24, 'h')).toBe('2026-03-29 19:00');
    expect(later('2026-01-10 23:50', 20, 'min')).toBe('2026-01-11 00:10');
  });

  test('keeps the time of day for whole days and longer', () => {
    expect(later('2026-03-28 19:00', 1, 'days', 'Europe/Vienna')).toBe('2026-03-29 19:00');
    expect(later('2026-01-10 19:00', 12, 'weeks')).toBe('2026-04-04 19:00');
    expect(later('2026-01-31 19:00', 1, 'months')).toBe('2026-02-28 19:00');
  });

  test('counts parts of a day as hours', () => {
    expect(later('2026-01-10 19:00', 0.5, 'days')).toBe('2026-01-11 07:00');
    expect(later('2026-01-10 19:00', 1.5, 'days')).toBe('2026-01-12 07:00');
  });

  test('has no time of day where none was written', () => {
    expect(later('2026-01-10', 24, 'h')).toBe('2026-01-11');
    expect(later('2026-01-10', 23, 'h', 'Europe/Vienna')).toBe('2026-01-10');
    expect(later('2026-01-10', 2, 'days')).toBe('2026-01-12');
  });

  test('is the second of two that the clock shows alike where so much time has passed', () => {
    // PEP 495 (fold) and the IANA time zone database: 01:17 came twice, at 00:17 and at 01:17 of universal time.
    const london = 'Europe/London';
    const start = at('2020-10-24 00:05');
    const end = (minutes: number) => {
      const moment = after(start, { value: minutes, unit: 'min' }, london);
      return [printMoment(moment), new Date(instantIn(moment, moment.minutes!, london) * 60_000).toISOString()];
    };
    expect(end(1512)).toEqual(['2020-10-25 01:17', '2020-10-25T00:17:00.000Z']);
    expect(end(1572)).toEqual(['2020-10-25 01:17', '2020-10-25T01:17:00.000Z']);
    expect(end(1632)).toEqual(['2020-10-25 02:17', '2020-10-25T02:17:00.000Z']);
  });

  test('lies as far away as was added, in every zone', () => {
    const zone = fc.constantFrom(undefined, 'Europe/Vienna', 'America/Santiago', 'Australia/Lord_Howe');
    const days = fc.integer({ min: 18_000, max: 22_000 });
    fc.assert(fc.property(days, fc.nat(1439), fc.nat(5000), zone, (day, minutes, added, name) => {
      const from = { day, minutes };
      const { least, most } = elapsed(from, after(from, { value: added, unit: 'min' }, name), name);
      expect(least).toBeLessThanOrEqual(added);
      expect(most).toBeGreaterThanOrEqual(added);
    }), { numRuns: 300 });
  });
});

describe('a moment before another', () => {
  test('is so only for certain', () => {
    expect(isBefore(at('2026-01-10 08:00'), at('2026-01-10 08:01'))).toBe(true);
    expect(isBefore(at('2026-01-10 08:00'), at('2026-01-10 08:00'))).toBe(false);
    expect(isBefore(at('2026-01-10 08:00'), at('2026-01-10'))).toBe(false);
    expect(isBefore(at('2026-01-10'), at('2026-01-10 08:00'))).toBe(false);
    expect(isBefore(at('2026-01-09'), at('2026-01-10 08:00'))).toBe(true);
    expect(isBefore(at('2026-01-10'), at('2026-01-09 08:00'))).toBe(false);
  });
});

describe('a length of time in words', () => {
  test.each([
    [1800, 1800, false, '30 h'],
    [1425, 1425, false, '23.8 h'],
    [1440, 1440, true, '24 h by the wall clock'],
    [30, 30, false, '30 min'],
    [60, 60, false, '1 h'],
    [0, 2880, true, '0 to 48 h by the wall clock'],
  ])('%d to %d minutes', (least, most, wallClock, text) => {
    expect(lengthText({ least, most, wallClock })).toBe(text);
  });

  test('may still go on', () => {
    expect(lengthText({ least: 330, most: 330, wallClock: false }, true)).toBe('5.5 h so far');
    expect(lengthText({ least: 330, most: 900, wallClock: true }, true)).toBe('at least 5.5 h by the wall clock so far');
  });
});
