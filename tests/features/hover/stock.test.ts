import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

// 20 mg of 90 % in 18 mL is 1000 ppm; 10 mL of that made up to 20 mL is 500 ppm: common practice.
describe('hover on a stock', () => {
  const bench = `
      stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL, at fridge door
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL, keeps 6 months`;

  test('tells what was found to be left, and what is left since then', () => {
    const found = (more: string) => hover(`
      powder P1 2025-11-02, GA3 1 g
              ^^ here
      left P1 2026-01-10, 640 mg
      ${more}`.replace('        ^^', '       ^^'), '2026-02-10')!.split('\n').find(line => line.includes('1 g at first'));
    expect(found('')).toBe('1 g at first, 640 mg weighed on 2026-01-10.');
    expect(found('stock G1 2026-01-12, from P1 40 mg, 36 mL')).toBe('1 g at first, 640 mg weighed on 2026-01-10, 600 mg left: 1 record takes from it.');
  });

  test('from powder tells its strength, how sure that is, what is left, and how long it keeps', () => {
    expect(hover(`${bench}
      soak VER-24 2026-01-10, G1 5 mL
                              ^^ here
    `, '2026-02-10')).toMatchInlineSnapshot(`
      "**G1** · stock from powder · made 2026-01-09 (4 weeks ago) · at fridge door

      **GA3 1000 ppm** = 1000 mg/L = 1 g/L = 0.1 % ≈ 2.887 mM

      The strength may be 949 to 1054 ppm, given mass read to the last digit written in mg (2.5 %) and volume read to the last digit written in mL (2.78 %); not counted: purity, as the label has it.

      18 mL made, 3 mL left: 2 records take from it.

      Good until 2030-01-09, in 3 years (keeps 4 years; default: common practice, no source). In water at 20 C, about half of it is gone after 14 days (a supplier’s product data page, unverified).

      1. Weigh 20 mg of GA3 powder on a balance that shows 1 mg.
      2. Wet the powder with a few drops of alcohol and stir until it has dissolved.
      3. Make it up to 18 mL with water, and mix well.
      4. Label it: GA3 1000 ppm, 2026-01-09, good until 2030-01-09.
      5. Keep it cold, dark and closed.

      20 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.

      - Make a stronger stock and dilute it: 100 mg of GA3 powder made up to 45 mL is 2000 ppm; 9 mL of that made up to 18 mL is 1000 ppm.
      - Make more of it: 100 mg of GA3 powder made up to 90 mL.
      - Halve a packet by eye: of 100 mg of GA3 powder, halved 2 times, one part is about 25 mg; make it up to 22.5 mL.

      Assumed: 90 % counts as the share of GA3 itself in the powder. 1 ppm counts as 1 mg/L, as in dilute water. % means weight in volume: 1 % is 10 g/L. Molar mass 346.379 g/mol, from standard atomic weights.

      ⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Powder: keep it out of eyes and lungs. Wear gloves and glasses, and keep out of draughts. Alcohol burns: keep flames and sparks away, and air the room. Label it and lock it away from children, animals, food and drink."
    `);
  });

  test('that was diluted tells from what', () => {
    expect(hover(`${bench}
      soak VER-24 2026-01-10, G2 25 mL
                                 ^^^^^ here
      soak VER-25 2026-01-10, G2
    `, '2026-07-01')).toMatchInlineSnapshot(`
      "**G2** · diluted from G1 · made 2026-01-09 (5 months ago)

      **GA3 500 ppm** = 500 mg/L = 0.5 g/L = 0.05 % ≈ 1.444 mM

      The strength may be 440 to 568 ppm, given mass read to the last digit written in mg (2.5 %) and volume read to the last digit written in mL (2.78 %) and volume taken read to the last digit written in mL (5 %) and volume made up to read to the last digit written in mL (2.5 %); not counted: purity, as the label has it.

      20 mL made, 0 mL left: 2 records take from it. 1 without a volume. More was taken than it held.

      Good only until 2026-07-09, in 8 days (its record says “keeps 6 months”). In water at 20 C, about half of it is gone after 14 days (a supplier’s product data page, unverified).

      1. Take 10 mL of G1 (1000 ppm) with a 100 mL measuring cylinder.
      2. Make it up to 20 mL with water (10 mL of water), and mix well.
      3. Label it: GA3 500 ppm, 2026-01-09, good until 2026-07-09.
      4. Keep it cold, dark and closed.

      Assumed: 1 ppm counts as 1 mg/L, as in dilute water. % means weight in volume: 1 % is 10 g/L. Molar mass 346.379 g/mol, from standard atomic weights. Volumes of dilute solutions add up.

      ⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink."
    `);
  });

  test('gives a dash and the reason where its strength or what is left is not known', () => {
    expect(hover(`
      stock G1 2026-01-09, GA3 20 mg
            ^^ here
      soak VER-24 2026-01-10, G1 5 mL
    `, '2031-01-10')?.split('\n\n').slice(1, 4)).toEqual([
      'GA3: – (Its final volume is not recorded.)',
      '1 record takes from it. Left: – (its final volume is not recorded)',
      'Past its date since 2030-01-09, 12 months ago (keeps 4 years; default: common practice, no source). ' +
        'In water at 20 C, about half of it is gone after 14 days (a supplier’s product data page, unverified).',
    ]);
  });

  test('shows no strength and no last day where its line has a mistake, nor does what was made from it', () => {
    const over = (name: string) => hover(`
      stock G1 2026-01-09, GA3 20 mg, purity 90 per cent, 18 mL
            ${name === 'G1' ? '^^' : ''} here
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
             ${name === 'G2' ? '^^' : ''} here
    `.replace(/^ +here\n/gm, ''), '2026-02-10');
    expect(over('G1')).toBe(`**G1** · stock from powder · made 2026-01-09 (4 weeks ago)

GA3: – (Its line has a mistake, so its strength is unknown until you fix it.)

18 mL made, 8 mL left: 1 record takes from it.

⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink.`);
    expect(over('G2')).toContain('GA3: – (Its line has a mistake');
    expect(over('G2')).not.toMatch(/\d ppm/);
  });

  test('says that it is more than dissolves', () => {
    expect(hover(`
      stock G1 2026-01-09, GA3 60 mg, 10 mL
            ^^ here
    `, '2026-02-10')).toContain('More than dissolves in water: 5 g/L (a supplier’s product data page, unverified).');
  });

  test('is none where nothing defines it', () => {
    expect(hover(`
      soak VER-24 2026-01-10, G9 5 mL
                              ^^ here
    `, '2026-02-10')).toBeUndefined();
  });
});
