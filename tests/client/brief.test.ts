import { expect, test } from 'vitest';
import { briefly, nextInFull, nextInWords, shortly } from '../../client/src/views/brief.ts';
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

const late: DueShown = { ...item, group: 'overdue', kind: 'count', what: 'count; last looked at long ago', overdueDays: 3 };
const soak: DueShown = { ...item, id: 'V-2/A', group: 'today', kind: 'soak', when: '2026-01-11 19:00', isRunning: true };

test('the status bar begins with the soak that runs, and counts what is overdue beside it', () => {
  expect(nextInWords([late, late, soak])).toBe('V-2/A: lift 19:00 · 2 overdue');
  expect(nextInWords([late, soak])).toBe('V-2/A: lift 19:00 · 1 overdue');
  expect(nextInWords([soak])).toBe('V-2/A: lift 19:00');
  expect(nextInWords([{ ...soak, when: '2026-01-11' }])).toBe('V-2/A: lift today');
  expect(nextInWords([{ ...item, group: 'today' }, { ...soak, group: 'this week', when: '2026-01-12 06:58' }]))
    .toBe('V-2/A: lift Mon 06:58 · 1 due today');
  expect(nextInWords([{ ...soak, group: 'overdue' }, late])).toBe('V-2/A: lift overdue since 19:00 · 1 overdue');
  expect(nextInWords([{ ...soak, group: 'overdue', overdueDays: 2 }])).toBe('V-2/A: lift 2 days overdue');
  // One that ends after this week is in view all the same.
  expect(nextInWords([{ ...soak, group: 'later' }])).toBe('V-2/A: lift 2026-01-11 19:00');
});

test('soaks that end at one time are one in the status bar, before those that end later', () => {
  const at = (when: string, ...ids: string[]) => ids.map((id): DueShown => ({ ...soak, id, group: 'this week', when }));
  const five = at('2026-01-13 06:58', 'V-2/A', 'V-2/B', 'V-2/C', 'V-2/D', 'V-2/E');
  const items = [late, ...five, ...at('2026-01-13 19:00', 'V-3/A')];
  expect(nextInWords(items)).toBe('5 lifts Tue 06:58 · 1 overdue');
  expect(nextInFull(items)).toBe('V-2/A, V-2/B, V-2/C, V-2/D, V-2/E: lift, 2026-01-13 06:58\nV-1/A: count; last looked at long ago, 2026-01-11');
});

test('without a soak the status bar tells what is due next within a week, or how much is overdue', () => {
  expect(nextInWords([])).toBeUndefined();
  expect(nextInWords([item])).toBeUndefined();
  expect(nextInWords([{ ...item, group: 'this week' }])).toBe('V-1/A: look for mould, Sun');
  expect(nextInWords([late])).toBe('V-1/A: count, 3 days overdue');
  expect(nextInWords([{ ...late, id: 'G1', kind: 'stock', what: 'was good until 2026-01-08; replace it now' }])).toBe('G1: replace it, 3 days overdue');
  expect(nextInWords([late, late])).toBe('2 overdue');
  expect(nextInWords([{ ...late, group: 'long ago', overdueDays: 900 }])).toBeUndefined();
});

test('over the status bar stands all that it counts', () => {
  const today: DueShown = { ...item, group: 'today', id: 'V-5', what: 'feed them' };
  const other: DueShown = { ...late, id: '', what: '12 counts at shelf 1, longest 40 days' };
  expect(nextInWords([late, other, soak])).toBe('V-2/A: lift 19:00 · 2 overdue');
  expect(nextInFull([late, other, soak, today])).toBe([
    'V-2/A: lift, 2026-01-11 19:00', 'V-1/A: count; last looked at long ago, 2026-01-11', '12 counts at shelf 1, longest 40 days, 2026-01-11',
  ].join('\n'));
  expect(nextInWords([soak, today, { ...today, id: 'V-6' }])).toBe('V-2/A: lift 19:00 · 2 due today');
  expect(nextInFull([soak, today, { ...today, id: 'V-6' }, item])).toBe('V-2/A: lift, 2026-01-11 19:00\nV-5: feed them, 2026-01-11\nV-6: feed them, 2026-01-11');
  // Without a soak and with one overdue or none the bar tells the next.
  expect(nextInFull([late, today])).toBe('V-1/A: count; last looked at long ago, 2026-01-11');
  expect(nextInFull([{ ...item, group: 'this week' }, item])).toBe('V-1/A: look for mould, 2026-01-11');
  // A soak alone.
  expect(nextInFull([soak, item])).toBe('V-2/A: lift, 2026-01-11 19:00');
});

test('over the status bar many are not listed without an end', () => {
  const many = Array.from({ length: 23 }, (_, n) => ({ ...late, id: `V-${n}` }));
  const lines = nextInFull(many).split('\n');
  expect(nextInWords(many)).toBe('23 overdue');
  expect(lines).toHaveLength(21);
  expect([lines[19], lines[20]]).toEqual(['V-19: count; last looked at long ago, 2026-01-11', 'and 3 more']);
});

test('long names and reminders are cut off in the status bar, the time never, and stand whole over it', () => {
  const long: DueShown = {
    ...item, group: 'today', id: 'VERATRUM-2024/WARM', what: 'look for shoots under the glass, then write', when: '2026-01-11 19:00',
  };
  expect(nextInWords([long])).toBe('VERATRUM-2024/W…: look for shoots under t…, 19:00');
  expect(nextInWords([{ ...long, kind: 'soak', isRunning: true }])).toBe('VERATRUM-2024/W…: lift 19:00');
  expect(nextInFull([long])).toBe('VERATRUM-2024/WARM: look for shoots under the glass, then write, 2026-01-11 19:00');
  const round: DueShown = { ...late, id: '', what: '12 counts at shelf 1, longest 40 days' };
  expect(nextInWords([round])).toBe('12 counts at shelf 1, longest 40 days, overdue');
  expect(nextInFull([round])).toBe('12 counts at shelf 1, longest 40 days, 2026-01-11');
});
