import { expect, test } from 'vitest';
import { messageOf } from '../../client/src/alarm-words.ts';
import { together, type Ring } from '../../client/src/alarm-times.ts';
import type { SoakShown } from '../../server/src/lsp/calendar-shapes.ts';

const MINUTE = 60_000;
const END = 100 * MINUTE;
const soak = (batch: string, more: Partial<SoakShown> = {}): SoakShown => ({
  key: batch, folder: 'file:///a', batch, plant: 'Iris alba', place: undefined, end: END, endText: '2026-01-11 19:00',
  limit: END, limitText: '2026-01-11 19:00', at: { uri: 'file:///a/a.germ', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } },
  ...more,
});
const ring = (of: SoakShown, more: Partial<Ring<SoakShown>> = {}): Ring<SoakShown> => ({ soak: of, kind: 'end', over: true, missed: false, ...more });
const before = { kind: 'before', over: false } as const;

test('one soak is told with its plant and place', () => {
  const one = soak('A', { place: 'jar 1' });
  expect(messageOf([ring(one)], END)).toBe('The soak of A (Iris alba), at jar 1, ends now (2026-01-11 19:00).');
  expect(messageOf([ring(one, before)], 0)).toBe('The soak of A (Iris alba), at jar 1, ends at 2026-01-11 19:00.');
  expect(messageOf([ring(one, { kind: 'again' })], END + 10 * MINUTE))
    .toBe('The soak of A (Iris alba), at jar 1, ended at 2026-01-11 19:00. It passed the limit at 2026-01-11 19:00.');
  expect(messageOf([ring(one, { missed: true })], END)).toBe('The soak of A (Iris alba), at jar 1, ended at 2026-01-11 19:00, while the editor was closed.');
});

test('soaks that end at one time are told together, each with its place', () => {
  const three = [soak('A', { place: 'jar 1' }), soak('B', { place: 'jar 2' }), soak('C')];
  expect(messageOf(three.map(each => ring(each)), END)).toBe('3 soaks end now (2026-01-11 19:00): A at jar 1, B at jar 2, C.');
  expect(messageOf(three.map(each => ring(each, before)), 0)).toBe('3 soaks end at 2026-01-11 19:00: A at jar 1, B at jar 2, C.');
  expect(messageOf(three.map(each => ring(each, { missed: true })), END))
    .toBe('3 soaks ended at 2026-01-11 19:00, while the editor was closed: A at jar 1, B at jar 2, C.');
});

test('soaks over their limit are told by the limit, which differs from plant to plant', () => {
  const late = (of: SoakShown[]) => messageOf(of.map(each => ring(each, { kind: 'again' })), END + 10 * MINUTE);
  expect(late([soak('A'), soak('B')])).toBe('2 soaks ended at 2026-01-11 19:00: A, B. They passed the limit at 2026-01-11 19:00.');
  expect(late([soak('A', { limit: END - MINUTE, limitText: '2026-01-11 18:59' }), soak('B'), soak('C', { limit: END + 60 * MINUTE })]))
    .toBe('3 soaks ended at 2026-01-11 19:00: A, B, C. A passed the limit at 2026-01-11 18:59. B passed the limit at 2026-01-11 19:00.');
});

test('ten soaks that end at one time are one alarm, and others have their own', () => {
  const ten = Array.from({ length: 10 }, (_, n) => ring(soak(`A/${n}`)));
  const others = [ring(soak('B', { end: END + MINUTE })), ring(soak('C', { folder: 'file:///b' })), ring(soak('D'), { missed: true })];
  expect(together([...ten, ...others]).map(rings => rings.length)).toEqual([10, 1, 1, 1]);
  expect(together([])).toEqual([]);
});
