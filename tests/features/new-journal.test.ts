import { expect, test } from 'vitest';
import { newJournal } from '../../server/src/features/new-journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { parse } from '../../server/src/syntax/parse.ts';

const on = (today: string, zone: string | undefined, isFirst = true) => newJournal(dayOfIso(today)!, zone, isFirst);

/** The text that is there when nothing was filled in. */
function untouched(snippet: string): string {
  const values = new Map([...snippet.matchAll(/\$\{(\d):([^}]*)\}/g)].map(([, stop, value]) => [stop, value!]));
  return snippet.replace(/\$\{\d:([^}]*)\}/g, '$1').replace(/\$(\d)/g, (_, stop: string) => values.get(stop) ?? '');
}

test('a winter has the name of its two years, whichever half it is begun in, and of one south of the equator', () => {
  expect(on('2026-11-05', 'Europe/Vienna').file).toBe('2026-27.germ');
  expect(on('2027-02-05', 'Europe/Vienna').file).toBe('2026-27.germ');
  expect(on('2099-12-05', undefined).file).toBe('2099-00.germ');
  expect(on('2027-02-05', 'Africa/Johannesburg').file).toBe('2027.germ');
});

test('every line of a new journal can be read', () => {
  const { head, lot } = on('2026-11-05', 'Europe/Vienna');
  const lines = (head + untouched(lot)).split('\n');
  expect(lines).toEqual([
    '# Winter 2026/27', 'zone Europe/Vienna', 'limit soak, 24 h', 'limit GA3, 1000 ppm', '',
    'lot LOT-1 Genus species, 60 seeds, collected 2026-09', 'split LOT-1, A 24 seeds, B 24 seeds', '',
    'day 2026-11-05', '',
  ]);
  expect(lines.flatMap(line => parse(line).problems)).toEqual([]);
});

test('a later file of a journal does not say again what the first one says', () => {
  expect(on('2027-01-05', 'Europe/Vienna', false).head).toBe('# Winter 2026/27\n\n');
  expect(on('2027-01-05', 'Pacific/Auckland', false).head).toBe('# Winter 2027\n\n');
});

test('seed was collected in the last autumn', () => {
  const collected = (today: string, zone: string) => /collected (\S+)\n/.exec(untouched(on(today, zone).lot))?.[1];
  expect(collected('2027-01-09', 'Europe/Vienna')).toBe('2026-09');
  expect(collected('2027-07-09', 'Europe/Vienna')).toBe('2026-09');
  expect(collected('2027-01-09', 'America/Santiago')).toBe('2026-03');
  expect(collected('2027-05-09', 'America/Santiago')).toBe('2027-03');
});
