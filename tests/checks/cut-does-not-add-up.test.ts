import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = '2026-06-20';

describe('a cut test that does not add up', () => {
  test('is marked over its numbers, one too many or one too few', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds
      day 2026-03-01
      sow VER-24/A
      sow VER-24/B
      sow VER-24/C
      day 2026-03-08
      count VER-24/A, 4, 1 rotted, 1 lost
      count VER-24/B, 4, 1 rotted, 1 lost
      count VER-24/C, 4, 1 rotted, 1 lost
      day 2026-06-01
      cut VER-24/A, 2 fresh, 1 dead, 1 empty
      cut VER-24/B, 2 fresh, 1 dead, 2 empty
                    ^^^^^^^^^^^^^^^^^^^^^^^^ cut-does-not-add-up
      cut VER-24/C, 3 hard
                    ^^^^^^ cut-does-not-add-up
    `, { now });
  });

  test('goes by the seeds that stayed where none was sown; by nothing where nobody wrote how many', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds
      cut VER-24/A 2026-06-01, 10 fresh
      cut VER-24 2026-06-01, 49 fresh
                             ^^^^^^^^ cut-does-not-add-up
      lot VER-25 Veratrum nigrum
      sow VER-25 2026-03-01
      cut VER-25 2026-06-01, 7 fresh
    `, { now });
  });

  test('knows what was counted by then, and no more', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 10 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 4
      cut VER-24 2026-06-01, 6 fresh
      count VER-24 2026-06-02, 1
            ^^^^^^ after-close
    `, { now });
  });

  test('is not judged where a count before it cannot be read', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 10 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 4 sprouts
                                 ^^^^^^^ unknown-fact
      cut VER-24 2026-06-01, 6 fresh
    `, { now });
  });

  test('shows the sum', () => {
    expect(problemsIn('cut-does-not-add-up', 'lot V Veratrum, 20 seeds\nsow V 2026-03-01, 10 seeds\ncount V 2026-03-08, 4\ncut V 2026-06-01, 2 fresh, 1 dead')[0]?.message)
      .toBe('The cut test of V counts 3 seeds, but 6 had not germinated (10 sown, 4 germinated, 0 rotted, 0 lost). '
        + 'Count again, or correct the wrong number.');
  });
});
