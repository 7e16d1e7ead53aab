import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a batch', () => {
  test('tells its life, what germinated of it and when', () => {
    // Wilson limits of 9/24 computed with R 4.2.2, prop.test without correction: 0.21159368, 0.57290038.
    expect(hover(`
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      soak VER-24/A 2026-01-10 19:00, G2 10 mL, 24 h, at bag 1
      sow VER-24/A 2026-01-11 19:10, 24 seeds, at bag 4
      count VER-24/A 2026-01-19, 3
      chill VER-24/A 2026-01-21, 4 C, 90 days, at fridge
      count VER-24/A 2026-02-02, 6, 5 emerged, 1 rotted
      count VER-24/A 2026-03-20, 0
            ^^^^^^^^ here
    `, '2026-03-25')).toMatchInlineSnapshot(`
      "**VER-24/A** · Veratrum nigrum · 24 seeds · at fridge

      soaked 24 h in GA3 500 ppm (G2), sown 10 weeks ago, 4 C for 63 of 90 days

      **Germinated 9 of 24 = 37.5 %** (95 % Wilson interval 21.2 to 57.3 %; 24 sown)

      Today is day 73; day 0 is the sowing on 2026-01-11. New germination was first seen on day 8, last on day 22. Last counted 5 days ago.

      emerged 5 · rotted 1 · neither germinated nor rotted 14

      Chill so far 63 of 90 days, 1512 of 2160 h within 0 to 10 °C (whole calendar days; 0 and 10 °C are included).

      | Measure | Value | Basis |
      | :-- | :-- | :-- |
      | first seed | before day 8 | the first germinated seed |
      | T50 | day 8 to 22 | half of the germinated seed, (G + 1) / 2 (Coolbear) |
      | half of the seed | – | fewer than 50 % of the seed sown germinated |
      | mean time | 5 to 18 days | the seed found at a check germinated after the check before |
      | emerged | 5 of 9 = 55.6 % | of the germinated seed; 95 % Wilson interval 26.7 to 81.1 % |"
    `);
  });

  test('that is closed says by what, and counts its days to there', () => {
    // Wilson limits of 9/22 computed with R 4.2.2, prop.test without correction: 0.23255816, 0.61265182.
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
                    ^ here
      sow VER-24/A 2026-01-11, at tray 4
      count VER-24/A 2026-02-02, 9, 2 lost
      cut VER-24/A 2026-03-01, 11 fresh, 2 dead
    `, '2026-05-25')).toMatchInlineSnapshot(`
      "**VER-24/A** · Veratrum nigrum · 24 seeds

      sown 4 months ago, cut open (11 fresh, 2 dead) 12 weeks ago

      **Germinated 9 of 22 = 40.9 %** (95 % Wilson interval 23.3 to 61.3 %; 24 sown less 2 lost)

      Closed on day 49; day 0 is the sowing on 2026-01-11. New germination was seen on day 22 only. Last counted 16 weeks ago.

      lost 2

      | Measure | Value | Basis |
      | :-- | :-- | :-- |
      | of full seed | 9 of 22 = 40.9 % | the seed, not counting what the cut test found empty; 95 % Wilson interval 23.3 to 61.3 % |
      | of viable seed | 9 of 20 = 45 % | the full seed, not counting what the cut test found dead; 95 % Wilson interval 25.8 to 65.8 % |
      | first seed | before day 22 | the first germinated seed |
      | T50 | before day 22 | half of the germinated seed, (G + 1) / 2 (Coolbear) |
      | half of the seed | – | fewer than 50 % of the seed sown germinated |
      | mean time | up to 22 days | the seed found at a check germinated after the check before |

      Closed on 2026-03-01 by “cut”."
    `);
  });

  test('in a soak says when its day 0 comes', () => {
    expect(hover(`
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
           ^^^^^^^^ here
    `, '2026-01-10 22:00')).toMatchInlineSnapshot(`
      "**VER-24/A** · Veratrum nigrum · 24 seeds

      in GA3 500 ppm now (3 h so far, out 2026-01-11 19:00)

      Day 0 is tomorrow; day 0 is the end of the soak on 2026-01-11."
    `);
  });

  test('that was divided names its parts and what it kept', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      split VER-24/A, 1 10 seeds, 2 10 seeds
      note VER-24/A 2026-01-11, hard
           ^^^^^^^^ here
    `, '2026-01-12')).toMatchInlineSnapshot(`
      "**VER-24/A** · Veratrum nigrum · 24 seeds

      nothing done yet

      Divided into VER-24/A/1 (10 seeds), VER-24/A/2 (10 seeds); 4 seeds kept."
    `);
  });

  test('gives no percentage where it would be wrong, and says why', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum
      count VER-24 2026-01-19, 3
      split VER-24, A 24 seeds
      count VER-24/A 2026-01-20, 25
            ^^^^^^^^ here
    `, '2026-01-21')).toMatchInlineSnapshot(`
      "**VER-24/A** · Veratrum nigrum · 24 seeds

      nothing done yet

      Germinated: – (more are counted (25) than there are seeds (24))

      Days: – (no day 0: not yet sown, soaked or in a stage)"
    `);
  });

  test('with a record that could not be read says that its numbers may lack something', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 24 seeds
      split VER-24, A 24 seeds
      sow VER-24/A 2026-01-11
          ^^^^^^^^ here
      count VER-24/A 2026-01-19, 3 germinted
    `, '2026-01-21')?.split('\n\n').at(-1)).toBe(
      'A record of this batch, or of the seed it was split from, has an error, so these numbers may be incomplete.');
  });

  test('is none where it was never split off', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 24 seeds
      count VER-24/A 2026-01-19, 3
            ^^^^^^^^ here
    `, '2026-01-21')).toBeUndefined();
  });
});
