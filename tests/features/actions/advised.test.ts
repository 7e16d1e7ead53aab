import { expect, test } from 'vitest';
import { adviceActions } from '../../../server/src/features/actions/advised.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, journalOf } from '../journals.ts';

/** The lines that each action writes. */
function written(bottles: string, now: string): string[][] {
  const journal = journalOf(readFixture(`
    lot NEW-26 Gentiana lutea, 40 seeds
    guide Gentiana, GA3 500 ppm, 24 h, source "a book"
    ${bottles}
  `));
  return adviceActions(journal.lot('NEW-26')!, journal, at(now)).map(({ edits }) => edits[0]!.text.trim().split('\n'));
}

test('reminders and soaks of the treated seed name the bottle in hand that is used up first', () => {
  const bottles = 'stock G1 2026-01-02, GA3 20 mg, 20 mL\n    stock G5 2026-01-02, GA3 10 mg, 20 mL';
  expect(written(bottles, '2026-02-01 19:00')).toEqual([
    [
      'split NEW-26, A 20 seeds, B 20 seeds', 'due NEW-26/A 2026-02-01, soak in GA3 500 ppm from G5 for 24 h',
      'due NEW-26/B 2026-02-01, soak in water for 24 h',
    ],
    [
      'split NEW-26, A 20 seeds, B 20 seeds', 'soak NEW-26/A 2026-02-01 19:00, GA3 500 ppm, 24 h', '  from G5',
      'soak NEW-26/B 2026-02-01 19:00, water, 24 h',
    ],
  ]);
});

test.each([
  ['too weak', 'stock G1 2026-01-02, GA3 2 mg, 20 mL'], ['past its date', 'stock G1 2020-01-02, GA3 20 mg, 20 mL'],
  ['used up', 'stock G1 2026-01-02, GA3 20 mg, 20 mL\n    left G1 2026-01-03, 0 mL'], ['of another agent', 'stock K1 2026-01-02, KNO3 2 g, 1 L'],
])('a bottle that is %s is not named', (_, bottles) => {
  const [reminders, soaks] = written(bottles, '2026-02-01 19:00');
  expect(reminders?.[1]).toBe('due NEW-26/A 2026-02-01, soak in GA3 500 ppm for 24 h');
  expect(soaks?.slice(1)).toEqual(['soak NEW-26/A 2026-02-01 19:00, GA3 500 ppm, 24 h', 'soak NEW-26/B 2026-02-01 19:00, water, 24 h']);
});
