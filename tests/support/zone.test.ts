import { expect, test } from 'vitest';

test('the tests run in a zone that has no midnight on a day in September', () => {
  // IANA time zone database, America/Santiago: 24:00 on 7 September 2024 is 01:00 on the 8th.
  expect(new Date(2024, 8, 8).getHours()).toBe(1);
});
