import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countables } from '../../server/src/model/record.ts';
import { batchOf, counted } from './helpers.ts';

/** The totals after counts, each the facts of one record a day. */
function after(...counts: string[]) {
  const lines = counts.map((facts, day) => `count VER-24 2026-01-${String(day + 1).padStart(2, '0')}, ${facts}`);
  return counted(batchOf(['lot VER-24 Veratrum nigrum, 900 seeds', 'sow VER-24 2025-12-31', ...lines].join('\n')).totals);
}

describe('a count', () => {
  test('is what is new; with = it is the total so far', () => {
    expect(after('3', '2', '0')).toEqual({ germinated: 5 });
    expect(after('3', '=9 germinated', '1')).toEqual({ germinated: 10 });
    expect(after('3 rotted, 1 lost', '=3 rotted, 2 lost')).toEqual({ rotted: 3, lost: 3 });
  });

  test('of a later stage implies the earlier ones where they lag behind', () => {
    expect(after('2 emerged')).toEqual({ germinated: 2, emerged: 2 });
    expect(after('3', '2 emerged')).toEqual({ germinated: 3, emerged: 2 });
    expect(after('3', '2 emerged', '2 emerged')).toEqual({ germinated: 4, emerged: 4 });
    expect(after('3', '4 leaf', '1')).toEqual({ germinated: 5, emerged: 4, leaf: 4 });
    expect(after('2 emerged, 2 germinated')).toEqual({ germinated: 2, emerged: 2 });
    expect(after('=6 leaf')).toEqual({ germinated: 6, emerged: 6, leaf: 6 });
  });

  test('of fates and qualities leaves the stages alone', () => {
    expect(after('3', '1 died, 2 leggy, 1 abnormal, 4 rotted, 1 lost'))
      .toEqual({ germinated: 3, died: 1, leggy: 2, abnormal: 1, rotted: 4, lost: 1 });
  });

  test('of so many is the same as two that make up as many', () => {
    fc.assert(fc.property(fc.constantFrom(...countables), fc.nat(9), fc.nat(9), (what, some, more) => {
      expect(after('3, 2 emerged', `${some + more} ${what}`)).toEqual(after('3, 2 emerged', `${some} ${what}`, `${more} ${what}`));
    }), { numRuns: 100 });
  });
});
