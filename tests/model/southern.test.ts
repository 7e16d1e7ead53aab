import { expect, test } from 'vitest';
import { isSouthern } from '../../server/src/model/southern.ts';

const offset = (zone: string, month: number) => {
  const shown = new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' })
    .formatToParts(new Date(Date.UTC(2026, month - 1, 15))).find(({ type }) => type === 'timeZoneName')!.value;
  const [, sign = '+', hours = '0', minutes = '0'] = /GMT(?:([+-])(\d+):(\d+))?/.exec(shown)!;
  return Number(`${sign}1`) * (Number(hours) * 60 + Number(minutes));
};

// Antarctica keeps the summer time of whoever supplies the station.
const places = Intl.supportedValuesOf('timeZone').filter(zone => zone.includes('/') && !zone.startsWith('Antarctica/'));

test('clocks that are put forward in January hang south of the equator, those of July do not', () => {
  const [southern, northern] = [1, -1].map(sign => (
    places.filter(zone => sign * (offset(zone, 1) - offset(zone, 7)) > 0)));
  expect(southern!.length).toBeGreaterThan(10);
  expect(northern!.length).toBeGreaterThan(50);
  expect(southern!.filter(zone => !isSouthern(zone))).toEqual([]);
  expect(northern!.filter(isSouthern)).toEqual([]);
});

test('places without a summer time, older names and other spellings are known, and what is no place is not southern', () => {
  for (const zone of [
    'Africa/Johannesburg', 'Australia/Brisbane', 'America/Lima', 'America/Argentina/Salta', 'America/Buenos_Aires', 'NZ', 'pacific/auckland',
  ]) expect(isSouthern(zone), zone).toBe(true);
  for (const zone of [undefined, 'UTC', 'Etc/GMT+12', 'Africa/Cairo', 'America/Bogota', 'Asia/Singapore', 'America', '']) {
    expect(isSouthern(zone), zone).toBe(false);
  }
});
