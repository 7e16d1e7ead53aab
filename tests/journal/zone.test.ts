import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DAY, instantsOf, isZone, shownAt } from '../../server/src/journal/zone.ts';
import { at } from './helpers.ts';

const instants = (text: string, zone: string) => {
  const { day, minutes } = at(text);
  const { first, last } = instantsOf(day, minutes!, zone);
  const iso = (minute: number) => new Date(minute * 60_000).toISOString().slice(0, 16);
  return first === last ? iso(first) : `${iso(first)} or ${iso(last)}`;
};

// Summer time in the European Union begins on 2026-03-29 and ends on 2026-10-25 at 01:00 of universal time
// (directive 2000/84/EC). In Chile it ends at the midnight after 2026-04-04 and begins at that after 2026-09-05
// (IANA tz database).
describe('the moments at which a clock shows a time', () => {
  test.each([
    ['2026-03-28 19:00', 'Europe/Vienna', '2026-03-28T18:00'],
    ['2026-03-29 01:59', 'Europe/Vienna', '2026-03-29T00:59'],
    ['2026-03-29 03:00', 'Europe/Vienna', '2026-03-29T01:00'],
    ['2026-10-25 01:59', 'Europe/Vienna', '2026-10-24T23:59'],
    ['2026-10-25 03:00', 'Europe/Vienna', '2026-10-25T02:00'],
    ['2026-09-06 01:00', 'America/Santiago', '2026-09-06T04:00'],
    ['2026-09-05 23:59', 'America/Santiago', '2026-09-06T03:59'],
    ['2026-01-10 00:00', 'Asia/Kolkata', '2026-01-09T18:30'],
  ])('%s in %s is %s', (text, zone, instant) => {
    expect(instants(text, zone)).toBe(instant);
  });

  test('are two in the hour that comes twice', () => {
    expect(instants('2026-10-25 02:00', 'Europe/Vienna')).toBe('2026-10-25T00:00 or 2026-10-25T01:00');
    expect(instants('2026-10-25 02:59', 'Europe/Vienna')).toBe('2026-10-25T00:59 or 2026-10-25T01:59');
    expect(instants('2026-04-04 23:30', 'America/Santiago')).toBe('2026-04-05T02:30 or 2026-04-05T03:30');
  });

  test('are those of a clock not yet put forward in the hour that is left out', () => {
    expect(instants('2026-03-29 02:30', 'Europe/Vienna')).toBe('2026-03-29T01:30');
    expect(instants('2026-09-06 00:30', 'America/Santiago')).toBe('2026-09-06T04:30');
  });

  test('are shown as the same time again', () => {
    const zone = fc.constantFrom('Europe/Vienna', 'America/Santiago', 'Australia/Lord_Howe', 'Asia/Kolkata', 'UTC', 'Africa/Casablanca');
    fc.assert(fc.property(fc.integer({ min: 15_000, max: 24_000 }), fc.nat(DAY - 1), zone, (day, minutes, name) => {
      const { first, last } = instantsOf(day, minutes, name);
      const shown = [first, last].map(instant => shownAt(instant, name));
      // A time that was left out is shown later than it was written, and by no more than an hour.
      for (const each of shown) expect(each.day * DAY + each.minutes - (day * DAY + minutes)).toBeOneOf([0, 30, 60]);
      expect(last - first).toBeOneOf([0, 30, 60]);
    }), { numRuns: 300 });
  });
});

describe('a zone', () => {
  test.each(['Europe/Vienna', 'europe/vienna', 'America/Argentina/Buenos_Aires', 'UTC', 'Etc/GMT+5', 'EST5EDT'])('may be %s', zone => {
    expect(isZone(zone)).toBe(true);
  });

  test.each(['', 'Vienna', 'Europe/', '+01:00', 'constructor', 'Europe/Vienna ', '2026'])('cannot be "%s"', zone => {
    expect(isZone(zone)).toBe(false);
  });
});
