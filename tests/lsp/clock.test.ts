import { afterEach, expect, test, vi } from 'vitest';
import { dayOf } from '../../server/src/model/day.ts';
import { present } from '../../server/src/lsp/clock.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

// IANA time zone database: summer time ends at 01:00 of universal time on 2026-10-25 in Vienna.
test.each([
  ['00:30', { minutes: 150 }],
  ['01:30', { minutes: 150, second: true }],
  ['02:30', { minutes: 210 }],
])('at %s of universal time it is known which of the two hours the clock shows', (time, shown) => {
  vi.spyOn(Date, 'now').mockReturnValue(Date.parse(`2026-10-25T${time}:59Z`));
  expect(present('Europe/Vienna')).toEqual({ day: dayOf(2026, 10, 25), ...shown });
});
