import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['apply-exceeds-seedlings'] as const;

describe('drops on more seedlings than there are', () => {
  test('are marked when the next count knows of fewer', () => {
    expectMarked(codes, `
      lot MEC-26 Meconopsis racemosa, 20 seeds
      sow MEC-26 2026-01-11
      count MEC-26 2026-02-01, 3
      apply MEC-26 2026-02-08, GA3 100 ppm, 2 drops, 5 seedlings
      apply MEC-26 2026-02-09, GA3 100 ppm, 2 drops, 6 seedlings
                                                     ^^^^^^^^^^^ apply-exceeds-seedlings
      count MEC-26 2026-02-15, 2
    `);
  });

  test('are marked by a count of the same day, whichever comes first', () => {
    expectMarked(codes, `
      lot MEC-26 Meconopsis racemosa, 20 seeds
      sow MEC-26 2026-01-11
      count MEC-26 2026-02-01, 3
      apply MEC-26 2026-02-01, GA3 100 ppm, 2 drops, 4 seedlings
                                                     ^^^^^^^^^^^ apply-exceeds-seedlings
      apply MEC-26 2026-02-15, GA3 100 ppm, 2 drops, 5 seedlings
                                                     ^^^^^^^^^^^ apply-exceeds-seedlings
      count MEC-26 2026-02-15, 1
    `);
  });

  test('are taken to be on what may have come up since the last count, as long as there was seed for it', () => {
    expectMarked(codes, `
      lot MEC-26 Meconopsis racemosa, 20 seeds
      sow MEC-26 2026-01-11
      count MEC-26 2026-02-01, 3 germinated, 6 rotted, 1 lost, 1 died
      apply MEC-26 2026-02-08, GA3 100 ppm, 2 drops, 12 seedlings
      apply MEC-26 2026-02-09, GA3 100 ppm, 2 drops, 13 seedlings
                                                     ^^^^^^^^^^^^ apply-exceeds-seedlings
    `);
  });

  test('are not judged where the number of seeds is not known, or a record could not be read', () => {
    expectMarked(codes, `
      lot MEC-26 Meconopsis racemosa
      apply MEC-26 2026-02-08, GA3 100 ppm, 2 drops, 13 seedlings
      lot PRI-26 Primula beesiana, 20 seeds
      sow PRI-26 2026-01-11
      count PRI-26 2026-02-01, 3
      count PRI-26 2026-02-02, 9 germniated
      apply PRI-26 2026-02-01, GA3 100 ppm, 2 drops, 4 seedlings
    `);
  });

  test('are told with how many there were, and how that is known', () => {
    const [problem] = problemsIn(codes[0], `
      lot MEC-26 Meconopsis racemosa, 20 seeds
      sow MEC-26 2026-01-11
      count MEC-26 2026-02-01, 3, 1 died
      apply MEC-26 2026-02-08, GA3 100 ppm, 2 drops, 4 seedlings
      count MEC-26 2026-02-15, 0
    `);
    expect(problem?.message).toContain(
      'This is given to 4 seedlings of MEC-26, but there are at most 2 (3 germinated by 2026-02-15, less 1 that had died).');
  });
});
