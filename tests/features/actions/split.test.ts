import { describe, expect, test } from 'vitest';
import { splitActions } from '../../../server/src/features/actions/split.ts';
import { variantsOf } from '../../support/fixture.ts';
import { journalOf } from '../journals.ts';
import { applied, journalIn } from './applied.ts';

/** The titles and the lines that are added, the same in all variants but for the ends of lines. */
function splits(source: string, path = 'VER-24'): string[][] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    const lot = journal.lot(path.split('/')[0]!)!;
    return splitActions(lot, lot.batches.get(path)!, journal).map(action => {
      const after = journalIn(applied(journal, action.edits));
      const { batches } = after.lot(lot.id)!;
      const parts = batches.get(path)!.children.map(({ seeds }) => seeds!);
      const given = parts.reduce((a, b) => a + b);
      expect(given).toBeLessThanOrEqual(lot.batches.get(path)!.kept!);
      if (parts.length === 2) expect(given).toBe(lot.batches.get(path)!.kept);
      expect(after.files.size).toBe(journal.files.size);
      return [action.title, ...action.edits[0]!.text.split(/\r?\n/).slice(1)];
    });
  });
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

describe('a lot is split into seed to treat and seed to leave untreated', () => {
  test('about half and half, and in dishes, with what each finds', () => {
    expect(splits(`
      lot VER-24 Veratrum nigrum, 60 seeds
        From the rock garden.
      lot VER-25 Veratrum album, 20 seeds
    `)).toMatchInlineSnapshot(`
      [
        [
          "Split VER-24 into A (30 to treat) and B (30 to leave untreated): can show a gain from 40 to 77 %",
          "split VER-24, A 30 seeds, B 30 seeds",
        ],
        [
          "Split VER-24 into 4 dishes of 7 to treat (A to D) and 4 to leave untreated (E to H): can show a gain from 40 to 87 %, even if dishes differ",
          "split VER-24, A 7 seeds, B 7 seeds, C 7 seeds, D 7 seeds, E 7 seeds, F 7 seeds, G 7 seeds, H 7 seeds",
        ],
      ]
    `);
  });

  test('and it is said where the seeds are too few, or more than need be', () => {
    expect(splits('lot VER-24 Veratrum nigrum, 3 seeds')).toEqual([[
      'Split VER-24 into A (2 to treat) and B (1 to leave untreated): too few to show whether it pays', 'split VER-24, A 2 seeds, B 1 seed',
    ]]);
    expect(splits('lot VER-24 Veratrum nigrum, 1200 seeds')[0]?.[0]).toBe(
      'Split VER-24 into A (600 to treat) and B (600 to leave untreated): can show a gain of 15 points');
  });

  test('a batch too, below the split that made it, with names that nothing has', () => {
    expect(splits(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 48 seeds
      note VER-24/A/A 2026-01-02, who split that off
      note VER-24/A 2026-01-02, for the trial
    `, 'VER-24/A').map(([, line]) => line)).toMatchInlineSnapshot(`
      [
        "split VER-24/A, B 24 seeds, C 24 seeds",
        "split VER-24/A, B 6 seeds, C 6 seeds, D 6 seeds, E 6 seeds, F 6 seeds, G 6 seeds, H 6 seeds, I 6 seeds",
      ]
    `);
  });

  test.each([
    ['it has no number', 'lot VER-24 Veratrum nigrum'], ['it is one seed', 'lot VER-24 Veratrum nigrum, 1 seed'],
    ['it was divided', 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 10 seeds'],
    ['it was soaked', 'lot VER-24 Veratrum nigrum, 60 seeds\nsoak VER-24 2026-01-10, water'],
    ['it was sown', 'lot VER-24 Veratrum nigrum, 60 seeds\nsow VER-24 2026-01-10'],
    ['a record of it cannot be read', 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 10 sedes'],
  ])('not where %s', (_, source) => {
    expect(splits(source)).toEqual([]);
  });
});
