import { expect, test } from 'vitest';
import { placeRecords } from '../../server/src/features/record-place.ts';
import { JournalFile } from '../../server/src/journal/journal-file.ts';
import { dayOf } from '../../server/src/model/day.ts';

const today = dayOf(2026, 1, 11)!;

function after(text: string, lines = ['lift VER-24/A 2026-01-11 18:45']): string {
  const file = new JournalFile('a.germ', text);
  const { at, text: added, cursor } = placeRecords(file, today, lines);
  file.edit({ start: at, end: at }, added);
  expect(file.text.at(cursor.line).text).toBe(lines.at(-1));
  expect(cursor.character).toBe(lines.at(-1)?.length);
  return file.text.text();
}

test('a record of today goes below the last day line where that is today', () => {
  expect(after('day 2026-01-11\ncount VER-24/A, 3\n  Fine.\n')).toBe(
    'day 2026-01-11\ncount VER-24/A, 3\n  Fine.\nlift VER-24/A 2026-01-11 18:45\n');
});

test('else a new day begins', () => {
  expect(after('day 2026-01-10\nsoak VER-24/A 19:00, water\n')).toBe(
    'day 2026-01-10\nsoak VER-24/A 19:00, water\n\nday 2026-01-11\nlift VER-24/A 2026-01-11 18:45\n');
});

test('a file without a last line end, with CRLF, or with empty lines at its end is kept as it is', () => {
  expect(after('day 2026-01-11\r\ncount VER-24/A, 3')).toBe(
    'day 2026-01-11\r\ncount VER-24/A, 3\r\nlift VER-24/A 2026-01-11 18:45\r\n');
  expect(after('day 2026-01-11\n\n\n')).toBe('day 2026-01-11\nlift VER-24/A 2026-01-11 18:45\n\n\n');
});

test('an empty file gets the day first', () => {
  expect(after('')).toBe('day 2026-01-11\nlift VER-24/A 2026-01-11 18:45\n');
});
