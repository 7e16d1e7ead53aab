import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

// Days of the week: checked with `date -d`.
describe('hover on a date', () => {
  test('gives the day of the week, how long ago it was, and the day number of the batch', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-11
      count VER-24 2026-01-19, 3
                   ^^^^^^^^^^ here
    `, '2026-03-25')).toMatchInlineSnapshot(`
      "**Monday 2026-01-19** · 9 weeks ago (65 days)

      Day 8 of VER-24; day 0 is the sowing on 2026-01-11."
    `);
  });

  test('of a day gives the day numbers of all batches below it', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds
      sow VER-24/A 2026-01-11
      sow VER-24/B 2026-01-12
      sow VER-24/C 2026-01-11
      day 2026-01-19
          ^^^^^^^^^^ here
      count VER-24/A 3
      count VER-24/B 3
        Fine.
      count VER-24/C 3
      count VER-24/A 2026-01-20, 3
      note VER-24 hard
      day 2026-01-26
      count VER-24/B 3
    `, '2026-01-18')).toMatchInlineSnapshot(`
      "**Monday 2026-01-19** · tomorrow

      - Day 7: VER-24/B
      - Day 8: VER-24/A, VER-24/C"
    `);
  });

  test('of a day with many batches names eight', () => {
    const parts = Array.from({ length: 10 }, (_, n) => `P${n} 2 seeds`).join(', ');
    const counts = Array.from({ length: 10 }, (_, n) => `count VER-24/P${n} 1`).join('\n');
    expect(hover(`lot VER-24 Veratrum nigrum, 20 seeds\nchill VER-24 2026-01-01, 4 C\nsplit VER-24 2026-01-02, ${parts}
day 2026-01-19\n    ^^^^^^^^^^ here\n${counts}`, '2026-01-19')).toContain('VER-24/P7 and 2 more');
  });

  test('of an end that was written is that day', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, until 2026-01-11 19:00
                                           ^^^^^^^^^^^^^^^^^^^^^^ here
    `, '2026-01-10')).toMatchInlineSnapshot(`
      "**Sunday 2026-01-11** · tomorrow

      Day 0 of VER-24; day 0 is the end of the soak on 2026-01-11."
    `);
  });

  test('of a time is the day that the record has from above', () => {
    expect(hover(`
      day 2026-01-10
      stock G1 19:00, GA3 20 mg, 20 mL
               ^^^^^ here
    `, '2026-01-10')).toBe('**Saturday 2026-01-10** · today');
  });

  test('of collecting gives the age of the seed', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09-14
                                            ^^^^^^^^^^^^^^^^^^^^ here
      sow VER-24 2026-01-11
    `, '2026-01-20')).toBe('Collected 2025-09-14 · 128 days old; 119 days old on 2026-01-11, the first day 0 of its batches');
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09
                                            ^^^^^^^^^^^^^^^^^ here
    `, '2025-10-10')).toBe('Collected 2025-09 · 10 to 39 days old');
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2027
                                            ^^^^^^^^^^^^^^ here
    `, '2025-10-10')).toBe('Collected 2027 · still to come');
  });
});
