import { expect, test } from 'vitest';
import { briefly, nextInWords, shortly } from '../../client/src/views/brief.ts';
import type { DueShown } from '../../server/src/lsp/calendar-shapes.ts';

const item: DueShown = {
  key: 'k', folder: 'file:///', journal: undefined, group: 'later', kind: 'reminder', what: 'look for mould', id: 'V-1/A', plant: undefined,
  place: undefined, when: '2026-01-11', overdueDays: 0, isRunning: false, writes: undefined,
  at: { uri: 'file:///a.germ', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } },
};

test('a soak is to be lifted and a batch to be counted, in a word; a reminder says itself', () => {
  expect(briefly({ ...item, kind: 'soak', isRunning: true, what: 'lift it from GA3 500 ppm' })).toBe('V-1/A: lift');
  // Nothing is to be lifted where seed was in the soak long ago.
  expect(briefly({ ...item, kind: 'soak', what: 'soak in GA3: no end recorded; it began 40 days ago' })).toBe('V-1/A: no end recorded');
  expect(briefly({ ...item, kind: 'count', what: 'count; last looked at long ago' })).toBe('V-1/A: count');
  expect(briefly(item)).toBe('V-1/A: look for mould');
});

test('of a date only what its group leaves open is shown', () => {
  expect(shortly(item)).toBe('2026-01-11');
  expect(shortly({ ...item, group: 'this week' })).toBe('Sun 2026-01-11');
  expect(shortly({ ...item, group: 'this week', when: '2026-01-12 19:00' })).toBe('Mon 2026-01-12 19:00');
  expect(shortly({ ...item, group: 'today', when: '2026-01-11 19:00' })).toBe('19:00');
  expect(shortly({ ...item, group: 'today' })).toBe('');
});

test('what is overdue says since when; earlier today that is a time', () => {
  expect(shortly({ ...item, group: 'overdue', overdueDays: 1 })).toBe('2026-01-11, 1 day ago');
  expect(shortly({ ...item, group: 'overdue', overdueDays: 3 })).toBe('2026-01-11, 3 days ago');
  expect(shortly({ ...item, group: 'overdue', when: '2026-01-11 08:00' })).toBe('overdue since 08:00');
});

test('the status bar tells a soak that runs beside whatever else is overdue', () => {
  const late: DueShown = { ...item, group: 'overdue', kind: 'count', overdueDays: 3 };
  const soak: DueShown = { ...item, id: 'V-2/A', group: 'today', kind: 'soak', when: '2026-01-11 19:00', isRunning: true };
  expect(nextInWords([])).toBeUndefined();
  expect(nextInWords([item])).toBeUndefined();
  expect(nextInWords([late])).toBe('V-1/A: count, 2026-01-11, 3 days ago');
  expect(nextInWords([late, late])).toBe('2 overdue');
  expect(nextInWords([late, late, soak])).toBe('2 overdue · V-2/A: lift, 19:00');
  expect(nextInWords([late, soak])).toBe('V-1/A: count, 2026-01-11, 3 days ago · V-2/A: lift, 19:00');
  expect(nextInWords([soak])).toBe('V-2/A: lift, 19:00');
  expect(nextInWords([{ ...soak, group: 'overdue' }, late])).toBe('2 overdue · V-2/A: lift, overdue since 19:00');
  // One that ends after this week is in view all the same.
  expect(nextInWords([{ ...soak, group: 'later' }])).toBe('V-2/A: lift, 2026-01-11 19:00');
});
