import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a split', () => {
  test('tells what difference these numbers of seed can show, and a division that shows more', () => {
    expect(hover(`
      lot L Iris alba, 40 seeds
      split L, A 12 seeds, B 12 seeds
      ^^^^^ here
    `, '2026-01-10')).toMatchInlineSnapshot(`
      "**What this split can show**

      | Untreated | Treated must reach | Better split | In several dishes |
      | :-- | :-- | :-- | :-- |
      | 10 % | 64 % or more |  | 84 % (2 dishes of 6) |
      | 40 % | 95 % or more |  |  |
      | 70 % | – (not even 100 %) |  |  |

      12 treated (A) and 12 untreated (B) seeds. Nothing was done to the parts yet, so which ones will be treated is assumed. So much must germinate for the verdict “worth repeating” 4 times in 5. “In several dishes”: so many on each side, of so many seeds each. It is assumed that you count both sides on the same days, about weekly, and that treated seed germinates no sooner. With one dish a side, the two dishes are assumed to be alike; nothing can show that afterwards. Dishes are assumed to differ a little, as they do (correlation 0.05).

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
      .toContain('24 treated (B, C) and 12 untreated (A) seeds. So much must');
  });

  test('of a great many seeds says so', () => {
    expect(hover('lot L Iris alba, 900 seeds\nsplit L, A 400 seeds, B 400 seeds\n^^^^^ here', '2026-01-10'))
      .toContain('With 400 treated and 400 untreated seeds, the verdict finds any gain of 15 points (4 times in 5).');
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
