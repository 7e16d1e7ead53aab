import { describe, expect, test } from 'vitest';
import { splitAction } from '../../../server/src/features/actions/split.ts';
import { visibleShare } from '../../../server/src/measures/design.ts';
import { variantsOf } from '../../support/fixture.ts';
import { journalOf } from '../journals.ts';
import { applied, journalIn } from './applied.ts';

/** The title and the lines that are added, the same in all variants but for the ends of lines. */
function split(source: string, path = 'VER-24'): string[] | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    const lot = journal.lot(path.split('/')[0]!)!;
    const action = splitAction(lot, lot.batches.get(path)!, journal);
    if (!action) return undefined;
    const after = journalIn(applied(journal, action.edits));
    const { batches } = after.lot(lot.id)!;
    const parts = batches.get(path)!.children.map(({ seeds }) => seeds!);
    expect(parts.reduce((a, b) => a + b)).toBe(lot.batches.get(path)!.kept);
    expect(after.files.size).toBe(journal.files.size);
    return [action.title, ...action.edits[0]!.text.split(/\r?\n/).slice(1)];
  });
  for (const other of others) expect(other).toEqual(first);
  return first;
}

describe('a lot is split into seed to treat and seed to leave untreated', () => {
  test('about half and half, by what lets the smallest difference be seen', () => {
    expect(visibleShare(29, 31, 0.4)).toMatchObject({ value: expect.closeTo(0.758, 3) });
    expect(visibleShare(30, 30, 0.4)).toMatchObject({ value: expect.closeTo(0.779, 3) });
    expect(split(`
      lot VER-24 Veratrum nigrum, 60 seeds
        From the rock garden.
      lot VER-25 Veratrum album, 20 seeds
    `)).toEqual(['Split VER-24 into A (29 to treat) and B (31 to leave untreated): can tell 40 % from 76 % or more', 'split VER-24, A 29 seeds, B 31 seeds']);
  });

  test('and it is said where the seeds are too few, or more than need be', () => {
    expect(split('lot VER-24 Veratrum nigrum, 3 seeds')).toEqual([
      'Split VER-24 into A (2 to treat) and B (1 to leave untreated): too few to show whether it pays', 'split VER-24, A 2 seeds, B 1 seed',
    ]);
    expect(split('lot VER-24 Veratrum nigrum, 1200 seeds')?.[0]).toBe(
      'Split VER-24 into A (600 to treat) and B (600 to leave untreated): can show a difference of 15 points');
  });

  test('a batch too, below the split that made it, with names that nothing has', () => {
    expect(split(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 48 seeds
      note VER-24/A 2026-01-02, for the trial
      note VER-24/A/A 2026-01-02, who split that off
    `, 'VER-24/A')?.[1]).toBe('split VER-24/A, B 23 seeds, C 25 seeds');
  });

  test.each([
    ['it has no number', 'lot VER-24 Veratrum nigrum'], ['it is one seed', 'lot VER-24 Veratrum nigrum, 1 seed'],
    ['it was divided', 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 10 seeds'],
    ['it was soaked', 'lot VER-24 Veratrum nigrum, 60 seeds\nsoak VER-24 2026-01-10, water'],
    ['it was sown', 'lot VER-24 Veratrum nigrum, 60 seeds\nsow VER-24 2026-01-10'],
    ['a record of it cannot be read', 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 10 sedes'],
  ])('not where %s', (_, source) => {
    expect(split(source)).toBeUndefined();
  });
});
