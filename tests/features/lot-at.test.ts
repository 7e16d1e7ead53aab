import { expect, test } from 'vitest';
import { lotAt } from '../../server/src/features/lot-at.ts';
import { journalOf } from './journals.ts';
import { readFixture } from '../support/fixture.ts';

const journal = journalOf(readFixture(`
  # Winter
  lot V-1 Veratrum nigrum, 60 seeds
    A remark,
    and one more.

  day 2026-01-11
  sow V-1/A 10 seeds
  stock G1, GA3 20 mg, 20 mL
    In the fridge.
  soak V-1/A G1 10 mL, 24 h
  sow V-2
  limit soak, 12 h
  sow
`));

test('each record of a lot or of a batch, and each remark on one, is about the lot', () => {
  const lines = Array.from({ length: 14 }, (_, line) => lotAt(journal, 'journal.germ', line));
  expect(lines).toEqual([
    undefined, 'V-1', 'V-1', 'V-1', undefined, undefined, 'V-1', undefined, undefined, 'V-1', undefined, undefined, undefined, undefined,
  ]);
});

test('a place beyond the end, or in no file of the journal, is about none', () => {
  expect(lotAt(journal, 'journal.germ', 99)).toBeUndefined();
  expect(lotAt(journal, 'other.germ', 1)).toBeUndefined();
});
