import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a split', () => {
  test('tells what difference these numbers of seed can show, and a division that shows more', () => {
    // R 4.2.2, exact power of fisher.test: 12 against 12 has 0.810 at 69 and 10 %, 0.814 at 96 and 40 %.
    expect(hover(`
      lot L Iris alba, 40 seeds
      split L, A 12 seeds, B 12 seeds
      ^^^^^ here
    `, '2026-01-10')).toMatchInlineSnapshot(`
      "**What this split can show**

      | Untreated | Treated must reach | Better split |
      | :-- | :-- | :-- |
      | 10 % | 69 % or more | 13 and 11: 64 % |
      | 40 % | 96 % or more | 11 and 13: 93 % |
      | 70 % | – (not even 100 %) |  |

      12 treated (A) and 12 untreated (B) seeds. This assumes that you treat the first part and not the second. Shares of germinated seed; Fisher’s exact test at 5 % with a power of 80 %.

      **split** – divides a lot or a batch; the rest of the seed stays in it"
    `);
  });

  test('tells it over the number of seeds too, with the sides that the journal knows', () => {
    expect(hover(`
      lot L Iris alba, 40 seeds
      split L, A 12 seeds, B 12 seeds, C 12 seeds
               ^^^^^^^^^^ here
      soak L/B 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/C 2026-01-10 19:00, GA3 500 ppm, 24 h
    `, '2026-01-10'))
      .toContain('24 treated (B, C) and 12 untreated (A) seeds. Shares');
  });

  test('of a great many seeds says so', () => {
    expect(hover('lot L Iris alba, 900 seeds\nsplit L, A 400 seeds, B 400 seeds\n^^^^^ here', '2026-01-10'))
      .toContain('With 400 treated and 400 untreated seeds, any two shares that differ by 15 points can be told apart (power 80 %).');
  });

  test('into replicates is only explained', () => {
    expect(hover(`
      lot L Iris alba, 40 seeds
      soak L 2026-01-10 19:00, GA3 500 ppm, 24 h
      split L 2026-01-11 20:00, A 12 seeds, B 12 seeds
      ^^^^^ here
    `, '2026-01-12')).toMatch(/^\*\*split\*\* – divides/);
  });
});
