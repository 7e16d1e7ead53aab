import { expect, test } from 'vitest';
import { journalTemplate, winterName } from '../../client/src/journal-template.ts';
import { parse } from '../../server/src/syntax/parse.ts';

test('a winter has the name of its two years, whichever half it is begun in', () => {
  expect(winterName(2026, 11)).toBe('2026-27.germ');
  expect(winterName(2027, 2)).toBe('2026-27.germ');
  expect(winterName(2099, 12)).toBe('2099-00.germ');
});

test('every line of the template can be read, those to take over too', () => {
  for (const line of journalTemplate(2026, 11, 5).split('\n')) {
    expect(parse(line).problems).toEqual([]);
    if (/^# (lot|split)/.test(line)) expect(parse(line.slice(2)).problems).toEqual([]);
  }
});

test('the template ends below the day of today', () => {
  expect(journalTemplate(2027, 1, 9).trimEnd().endsWith('day 2027-01-09')).toBe(true);
});
