import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = '2026-03-20';

describe('more seedlings than have germinated', () => {
  test('are marked where they died, are leggy or abnormal; as many are right', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 3, 3 leggy, 3 abnormal, 3 died
      count VER-24 2026-03-09, 1 leggy, 1 abnormal
                               ^^^^^^^ more-than-germinated
                                        ^^^^^^^^^^ more-than-germinated
      count VER-24 2026-03-10, 0
      count VER-24 2026-03-11, 1, 1 died
    `, { now });
  });

  test('are marked where one record says both', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      day 2026-03-01
      sow VER-24/A
      sow VER-24/B
      day 2026-03-08
      count VER-24/A, =7 germinated, =7 emerged
      count VER-24/B, =5 germinated, =7 emerged
                                     ^^^^^^^^^^ more-than-germinated
    `, { now });
  });

  test('are marked where they are potted, if anybody counted by then', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      day 2026-03-01
      sow VER-24/A
      sow VER-24/B
      day 2026-03-15
      pot VER-24/A, 9 seedlings
      pot VER-24/B, 9 seedlings
      count VER-24/A, 9
      pot VER-24/A 2026-03-16, 10 seedlings
                               ^^^^^^^^^^^^ more-than-germinated
    `, { now });
  });

  test('are marked where they were taken before the first count, and the counts leave no room for them', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 100 seeds
      split VER-24, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      day 2026-03-01
      sow VER-24/A
      sow VER-24/B
      sow VER-24/C
      sow VER-24/D
      day 2026-03-08
      pot VER-24/A, 9 seedlings
                    ^^^^^^^^^^^ more-than-germinated
      plant VER-24/B, 9 seedlings
                      ^^^^^^^^^^^ more-than-germinated
      pot VER-24/C, 9 seedlings
      pot VER-24/D, 9 seedlings
      day 2026-03-15
      count VER-24/A, 3
      count VER-24/B, 3
      count VER-24/C, =12
    `, { now });
  });

  test('are named', () => {
    const counted = 'lot V Veratrum, 60 seeds\nsow V 2026-03-01\ncount V 2026-03-08, 3, 4 died\n';
    expect(problemsIn('more-than-germinated', counted)[0]?.message).toBe('4 died in V are more than the 3 that germinated. '
      + 'Correct a number. A seedling that died or is leggy must have germinated first.');
    expect(problemsIn('more-than-germinated', `${counted.replace(', 4 died', '')}pot V 2026-03-09, 4 seedlings`)[0]?.message)
      .toMatch(/^4 potted seedlings in V are more than the 3 that germinated\./);
  });
});
