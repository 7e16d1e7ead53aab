import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

// 20 mg of 90 % in 18 mL is 1000 ppm; 10 mL of that made up to 20 mL is 500 ppm: common practice.
describe('hover on a stock', () => {
  const bench = `
      stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL, at fridge door
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL, keeps 6 months`;

  test('from powder tells its strength, how sure that is, what is left, and how long it keeps', () => {
    expect(hover(`${bench}
      soak VER-24 2026-01-10, G1 5 mL
                              ^^ here
    `, '2026-02-10')).toMatchInlineSnapshot(`
      "**G1** · stock from powder · made 2026-01-09 (4 weeks ago) · at fridge door

      **GA3 1000 ppm** = 0.1 % ≈ 2.887 mM

      90 % is taken as the share of GA3 itself in the powder. It may be from 949 to 1054 ppm, by mass read to the last digit written in mg (2.5 %) and volume read to the last digit written in mL (2.78 %); not counted: purity, as the label has it.

      18 mL made, 3 mL left: 2 records draw on it.

      Good until 2030-01-09, in 3 years (keeps 4 years; default: common practice, no source).

      ⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Powder: keep it out of eyes and lungs; gloves and glasses, no draught. Alcohol burns: no flame and no spark near, air the room. Label it and lock it away from children, animals, food and drink."
    `);
  });

  test('that was diluted tells from what', () => {
    expect(hover(`${bench}
      soak VER-24 2026-01-10, G2 25 mL
                                 ^^^^^ here
      soak VER-25 2026-01-10, G2
    `, '2026-07-01')).toMatchInlineSnapshot(`
      "**G2** · diluted from G1 · made 2026-01-09 (5 months ago)

      **GA3 500 ppm** = 0.05 % ≈ 1.444 mM

      10 mL of G1, which holds 1000 ppm, made up to 20 mL.

      20 mL made, at most 0 mL left: 2 records draw on it. 1 without a volume. More was drawn than was there.

      Good only until 2026-07-09, in 8 days (keeps 6 months, as its own record says).

      ⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink."
    `);
  });

  test('gives a dash and the reason where its strength or what is left is not known', () => {
    expect(hover(`
      stock G1 2026-01-09, GA3 20 mg
            ^^ here
      soak VER-24 2026-01-10, G1 5 mL
    `, '2031-01-10')?.split('\n\n').slice(1, 4)).toEqual([
      'GA3: – (The volume it was made up to is not written.)',
      '1 record draws on it. Left: – (the volume it was made up to is not written)',
      'Past its time since 2030-01-09, 12 months ago (keeps 4 years; default: common practice, no source).',
    ]);
  });

  test('is none where nothing defines it', () => {
    expect(hover(`
      soak VER-24 2026-01-10, G9 5 mL
                              ^^ here
    `, '2026-02-10')).toBeUndefined();
  });
});
