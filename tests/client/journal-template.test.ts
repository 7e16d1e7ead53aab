import { expect, test } from 'vitest';
import { firstLot, journalHead, winterName } from '../../client/src/journal-template.ts';
import { parse } from '../../server/src/syntax/parse.ts';

/** The text that is there when nothing was filled in. */
function untouched(snippet: string): string {
  const values = new Map([...snippet.matchAll(/\$\{(\d):([^}]*)\}/g)].map(([, stop, value]) => [stop, value!]));
  return snippet.replace(/\$\{\d:([^}]*)\}/g, '$1').replace(/\$(\d)/g, (_, stop: string) => values.get(stop) ?? '');
}

test('a winter has the name of its two years, whichever half it is begun in', () => {
  expect(winterName(2026, 11)).toBe('2026-27.germ');
  expect(winterName(2027, 2)).toBe('2026-27.germ');
  expect(winterName(2099, 12)).toBe('2099-00.germ');
});

test('every line of a new journal can be read', () => {
  const lines = (journalHead(2026, 11, 'Europe/Vienna') + untouched(firstLot(2026, 11, 5))).split('\n');
  expect(lines).toEqual([
    '# Winter 2026/27', 'zone Europe/Vienna', 'limit soak, 24 h', 'limit GA3, 1000 ppm', '',
    'lot LOT-1 Genus species, 60 seeds, collected 2026-09', 'split LOT-1, A 24 seeds, B 24 seeds', '',
    'day 2026-11-05', '',
  ]);
  expect(lines.flatMap(line => parse(line).problems)).toEqual([]);
});

test('a later file of a journal does not say again what the first one says', () => {
  expect(journalHead(2027, 1, undefined)).toBe('# Winter 2026/27\n\n');
});

test('the seed of a winter was collected in the autumn before it', () => {
  expect(untouched(firstLot(2027, 1, 9))).toContain('collected 2026-09');
});
