import { expect, test } from 'vitest';
import { briefly, shortly } from '../../client/src/views/brief.ts';
import type { DueShown } from '../../server/src/lsp/calendar-shapes.ts';

const item: DueShown = {
  key: 'k', folder: 'file:///', group: 'later', kind: 'reminder', what: 'look for mould', id: 'V-1/A', plant: undefined,
  place: undefined, when: '2026-01-11', overdueDays: 0, writes: undefined,
  at: { uri: 'file:///a.germ', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } },
};

test('a soak is to be lifted and a batch to be counted, in a word; a reminder says itself', () => {
  expect(briefly({ ...item, kind: 'soak', what: 'lift it from GA3 500 ppm' })).toBe('V-1/A: lift');
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
  expect(shortly({ ...item, group: 'overdue', when: '2026-01-11 08:00' })).toBe('08:00');
});
