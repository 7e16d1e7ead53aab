import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

// Wilson limits: of 0/20 Newcombe 1998, Stat Med 17:857-872; of the others check values computed with R 4.2.2,
// prop.test without correction.
describe('hover on a lot', () => {
  test('shows what it is, and its batches side by side', () => {
    expect(hover(`
      --- 2025.germ
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09-14, from own garden, stored dry, dormancy MPD, at tin 1
      split VER-24, A 20 seeds, B 20 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      --- 2026.germ
      day 2026-01-10
      soak VER-24/A 19:00, G2 10 mL, 24 h
      soak VER-24/B 19:00, water, 24 h
      day 2026-01-11
      sow VER-24/A 19:10, 20 seeds, 18 C
      sow VER-24/B 19:10, 20 seeds, 18 C
      day 2026-01-19
      count VER-24/A, 3
            ^^^^^^ here
      count VER-24/B, 0
      day 2026-02-02
      count VER-24/A, 14
      count VER-24/B, 0, 1 rotted
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**VER-24** · Veratrum nigrum · 60 seeds · collected 2025-09-14 · from own garden · stored dry · dormancy MPD · at tin 1

      - **GA3 500 ppm 24 h (A) against water 24 h (B)** – Worth repeating so far: by day 22, 17 of 20 treated seeds had germinated (85 %) and 0 of 20 untreated (0 %): 85 points more (95 % interval 58 to 95). 3 of 20 treated and 19 of 20 untreated seeds may still germinate. With one dish a side, a difference between the two dishes themselves would look the same.

      | Batch | Treatment | Sown | Germinated | Percent | Days |
      | :-- | :-- | :-- | :-- | :-- | :-- |
      | A | GA3 500 ppm 24 h | 20 | 17 of 20 | 85 % (64 to 94.8) | 8 to 22 |
      | B | water 24 h | 20 | 0 of 20 | 0 % (0 to 16.1) | – (none seen yet) |
      | rest | untreated | – (20 seeds not sown) | – | – | – |

      Percent of the seed sown less lost, with the 95 % Wilson interval. Days: first and last new germination seen, from the sowing."
    `);
  });

  test('gives a dash and the reason for every number that is not known', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum
          ^^^^^^ here
      split VER-24, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      soak VER-24/A 2026-01-10, GA3 unmeasured
      sow VER-24/B 2026-01-11, 20 seeds
      sow VER-24 2026-01-11
      count VER-24/C 2026-01-20, 4
      chill VER-24/D 2026-01-10, 4 C
      count VER-24/D 2026-01-20, 21
      count VER-24 2026-01-20, 4
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**VER-24** · Veratrum nigrum · number of seeds not recorded

      | Batch | Treatment | Sown | Germinated | Percent | Days |
      | :-- | :-- | :-- | :-- | :-- | :-- |
      | A | GA3 unmeasured (no end recorded) | – (20 seeds not sown) | – | – (not counted yet) | – |
      | B | untreated | 20 | – | – (not counted yet) | – |
      | C | untreated | – (20 seeds not sown) | 4 of 20 | 20 % (8.1 to 41.6) | – (no day 0: not yet sown, soaked or in a stage) |
      | D | 4 C | – (20 seeds not sown) | 21 | – (more are counted (21) than there are seeds (20)) | 10 |
      | rest | untreated | number not recorded | 4 | – (the number of seeds is unknown) | 9 |

      Percent of the seed sown less lost (of the seed in the batch if none was sown), with the 95 % Wilson interval. Days: first and last new germination seen, from the start of the first stage (D) and the sowing (rest)."
    `);
  });

  test('gives what was estimated as a range, here and over its batches', () => {
    const journal = (mark: string) => `
      lot VER-24 Veratrum nigrum, about 80 seeds
      split VER-24, A half, B 30 to 36 seeds
      sow VER-24/A 2026-01-11
      count VER-24/A 2026-01-20, 4
      split VER-24/B, 1 10 seeds
      ${mark}
    `;
    // A tenth either way of 80 is 72 to 88; half of that by eye 32.4 to 48.4.
    expect(hover(journal('sow VER-24 2026-01-11\n          ^^^^^^ here'), '2026-02-03')).toContain('| A | untreated | 32 to 49 | 4 of 32 to 49 |');
    expect(hover(journal('note VER-24/B 2026-01-11, dry\n           ^^^^^^^^ here'), '2026-02-03')).toContain('**VER-24/B** · Veratrum nigrum · 30 to 36 seeds');
    expect(hover(journal('note VER-24/B 2026-01-11, dry\n           ^^^^^^^^ here'), '2026-02-03')).toContain('Divided into VER-24/B/1 (10 seeds); 20 to 26 seeds kept.');
  });

  test('shows twelve batches, and says how many more there are', () => {
    const parts = Array.from({ length: 15 }, (_, n) => `P${n + 1} 2 seeds`).join(', ');
    const lines = hover(`lot VER-24 Veratrum nigrum, 30 seeds\n    ^^^^^^ here\nsplit VER-24, ${parts}`, '2026-02-03')!.split('\n');
    expect(lines.filter(line => line.startsWith('| P'))).toHaveLength(12);
    expect(lines.at(-1)).toBe('… and 3 more.');
  });

  test('with a record that could not be read says whose numbers may lack something', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
          ^^^^^^ here
      split VER-24, A 20 seeds, B 20 seeds
      sow VER-24/A 2026-01-11
      count VER-24/A 2026-01-19, 3 germinted
    `, '2026-02-03')?.split('\n\n').at(-1)).toBe('A record of VER-24/A has an error, so these numbers may be incomplete.');
  });

  test('that was never split is shown as its only batch', () => {
    expect(hover(`
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 20 seeds, collected 2025
                 ^^^^^^^^^^^^^^^ here
      soak VER-24 2026-01-10 19:00, water, 24 h
      sow VER-24 2026-01-11 20:00, 18 C, at bag 4
      count VER-24 2026-01-25, 17
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**VER-24** · Veratrum nigrum · 20 seeds · collected 2025 · at bag 4

      soaked 24 h in water, sown 3 weeks ago at 18 C

      **Germinated 17 of 20 = 85 %** (95 % Wilson interval 64 to 94.8 %; 20 sown)

      Today is day 23; day 0 is the sowing on 2026-01-11. New germination was seen on day 14 only. Last counted 9 days ago.

      neither germinated nor rotted 3

      | Measure | Value | Basis |
      | :-- | :-- | :-- |
      | first seed | before day 14 | the first germinated seed |
      | T50 | before day 14 | half of the germinated seed, (G + 1) / 2 (Coolbear) |
      | half of the seed | before day 14 | half of the seed sown less lost; for seed like this before day 14 (95 % interval, Kaplan-Meier) |
      | mean time | up to 14 days | the seed found at a check germinated after the check before |"
    `);
  });

  test('escapes whatever the journal has for a name', () => {
    expect(hover(`
      lot VER-24 [click](command:x) <img src=x> \`y\` | z, 6 seeds, from *a*_b_, stored "https://example.org", at # 1
          ^^^^^^ here
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**VER-24** · \\[click\\](command:x) \\<img src=x\\> \\\`y\\\` \\| z · 6 seeds · from \\*a\\*\\_b\\_ · stored https\\://example.org · at # 1

      nothing done yet"
    `);
  });

  test('is none where nothing defines it', () => {
    expect(hover(`
      count VER-24 2026-01-25, 17
            ^^^^^^ here
    `, '2026-02-03')).toBeUndefined();
  });
});
