import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** The blocks of a hover. */
function blocks(source: string, now = '2026-02-10'): string[] {
  return hover(source, now)?.split('\n\n') ?? [];
}

const stepsIn = (source: string, now?: string) => blocks(source, now).find(block => block.startsWith('1.'))?.split('\n');

describe('hover on the record of a solution', () => {
  test('of a salt counts the purity as its record says', () => {
    // 100 mg of a powder that holds 75 % of the salt, in 100 mL: 750 mg/L of salt, 675.696 mg/L of acid (computed from
    // the standard atomic weights: 750 * 346.379 / 384.469).
    expect(blocks(`
      stock GK 2026-01-09, GA3K 100.0 mg, purity 75 % salt, bought 2025-03, 100.0 mL
            ^^ here
    `).slice(0, 3)).toEqual([
      '**GK** · stock from powder · made 2026-01-09 (4 weeks ago) · powder bought 2025-03 (10 months ago)',
      '**GA3K 750 ppm** = 750 mg/L = 0.75 g/L = 0.075 % ≈ 1.951 mM ≈ 676 ppm GA3',
      'The strength may be 749 to 751 ppm, given mass read to the last digit written in mg (0.05 %) and volume read to the last ' +
        'digit written in mL (0.05 %); not counted: purity, as the label has it.',
    ]);
    // Of the acid: 75 / 0.900928 % of the salt.
    expect(blocks(`
      stock GK 2026-01-09, GA3K 100 mg, purity 75 % acid, 100 mL
            ^^ here
    `)[1]).toContain('**GA3K 832 ppm** = 832 mg/L = 0.832 g/L = 0.0832 % ≈ 2.164 mM ≈ 750 ppm GA3');
  });

  test('of powder halved by eye, or past its date, says so on the label', () => {
    const label = (record: string) => hover(`
      ${record}
            ^^ here
    `, '2026-02-10')?.match(/Label it: [^,]*/)?.[0];
    expect(label('stock G1 2026-01-09, GA3 400 mg halved 2 times, 100 mL')).toBe('Label it: GA3 about 1000 ppm');
    expect(label('stock G1 2026-01-09, GA3 100 mg, bought 2020, 100 mL')).toBe('Label it: GA3 at most 1000 ppm');
    expect(label('stock G1 2026-01-09, GA3 100 mg, 100 mL')).toBe('Label it: GA3 1000 ppm');
  });

  test('bought as a liquid goes by its label', () => {
    const found = blocks(`
      stock P3 2026-01-09, peroxide 3 %, 250 mL, keeps 6 months, at shelf
            ^^ here
    `);
    // 3 % of H2O2 is 0.881990 mol/L (34.014 g/mol from the standard atomic weights).
    expect(found.slice(0, 4)).toEqual([
      '**P3** · as bought · made 2026-01-09 (4 weeks ago) · at shelf',
      '**peroxide 3 %** = 30000 ppm = 30000 mg/L = 30 g/L ≈ 882 mM',
      'Error of the strength: – (a label does not say how exact its strength is)',
      '250 mL made, none of it used.',
    ]);
    expect(found.some(block => block.startsWith('1.'))).toBe(false);
    expect(found.at(-1)).toContain('never mix it with bleach');
  });

  test('that cannot be made says why, once', () => {
    const circle = blocks(`
      dilute G2 2026-01-09, from G3 10 mL, to 20 mL
             ^^ here
      dilute G3 2026-01-09, from G2 10 mL, to 20 mL
    `);
    expect(circle[1]).toContain('Strength: – (It is made from itself');
    expect(circle.join(' ')).not.toContain('It may be');
  });

  test('after many dilutions no longer adds up what each may be off', () => {
    const row = Array.from({ length: 25 }, (_, n) => `dilute D${n + 1} 2026-01-09, from D${n} 10 mL, to 20 mL`);
    const source = ['stock D0 2026-01-09, GA3 20 mg, 20 mL', ...row, 'note D25 2026-01-10, weak', '     ^^^ here'].join('\n');
    expect(blocks(source)[2]).toBe('Error of the strength: – (more than 20 dilutions follow one another)');
  });
});

describe('hover on a soak', () => {
  test('with a strength and a volume says how the liquid is made, and what a kitchen can do instead', () => {
    const found = blocks(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, 10 mL, 24 h
      ^^^^ here
    `);
    const steps = found.findIndex(block => block.startsWith('1.'));
    expect(found[steps]!.split('\n')).toEqual([
      '1. Weigh 5 mg of GA3 powder on a balance that shows 0.1 mg.',
      '2. Wet the powder with a few drops of alcohol and stir until it has dissolved.',
      '3. Make it up to 10 mL with water, and mix well. Measure with a 100 mL measuring cylinder.',
      '4. Put the seed into 10 mL of GA3 500 ppm, and cover all of it.',
      '5. Label it: the batch, the liquid, and when the soak began.',
      '6. Lift it after 24 h, rinse it with water, and note when.',
    ]);
    expect(found[steps + 1]).toBe('5 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.');
    expect(found[steps + 2]!.split('\n')[0]).toMatch(/^- Make a stronger stock and dilute it: 100 mg of GA3 powder made up to/);
    expect(found[steps + 3]).toContain('Assumed: 1 ppm counts as 1 mg/L');
  });

  test('in a stock says how much of it to take, and until when', () => {
    expect(stepsIn(`
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      soak VER-24 2026-01-10 19:00, G1 10 mL, until 2026-01-11 19:00
      ^^^^ here
    `)).toEqual([
      '1. Put the seed into 10 mL of G1, and cover all of it.',
      '2. Label it: the batch, the liquid, and when the soak began.',
      '3. Lift it on 2026-01-11 at 19:00, rinse it with water, and note when.',
    ]);
  });

  test('in a strength that cannot be made says so in place of a recipe', () => {
    const found = blocks(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 6000 ppm, 10 mL, 24 h
      ^^^^ here
    `);
    expect(found.some(block => block.startsWith('At most 5000 ppm of GA3 dissolves in water'))).toBe(true);
    expect(found.join(' ')).not.toContain('Weigh');
  });

  test('with powder on a damp towel has its steps, its reason and no ppm', () => {
    const found = blocks(`
      lot THA-25 Thalictrum delavayi, 60 seeds
      soak THA-25 2026-01-10 19:00, GA3 unmeasured, 24 h
      ^^^^ here
    `);
    expect(found[2]).toContain('it has no ppm and is left out of comparisons of doses; against untreated seed it counts as treated.');
    expect(found[3]).toContain('1. Put the seed in a damp paper towel with a little GA3 powder, in a closed bag.');
    expect(found.join(' ')).not.toMatch(/\d ppm/);
  });
});

describe('hover on drops', () => {
  const journal = (after: string) => `
      lot MEC-26 Meconopsis racemosa, 20 seeds
      stock G1 2026-01-09, GA3 2 mg, 20 mL
      sow MEC-26 2026-01-11
      count MEC-26 2026-02-01, 6, 1 leaf
      apply MEC-26 2026-02-08 18:00, G1, 2 drops, 4 seedlings
      ^^^^^ here
      ${after}
    `;

  test('tells what was given to how many, the limit, what came after, and the steps', () => {
    expect(hover(journal('count MEC-26 2026-02-22, 2 leaf, 1 died\n      count MEC-26 2026-03-01, 1 leaf'), '2026-03-02'))
      .toMatchInlineSnapshot(`
        "**Drops on MEC-26** of GA3 100 ppm (G1) · 2026-02-08 18:00 · 2 drops on each · on 4 seedlings

        GA3 100 ppm (G1): the strength of the stock, 10 % of the limit of 1000 ppm (default: common practice, no source)

        First new leaf seen 2026-02-22, 14 days later; 4 in all by 2026-03-01, 1 before. New since then: 1 died.

        1. Put 2 drops of G1 on the growing point of each seedling.
        2. Leave some seedlings without drops to compare, and mark which are which.

        ⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink.

        **apply** – a dose on seedlings that are already up"
      `);
  });

  test('says so when no leaf came, and when nobody looked', () => {
    expect(blocks(journal('count MEC-26 2026-02-22, 0'))[2]).toBe('No new leaf seen by 2026-02-22, 14 days later.');
    expect(blocks(journal(''))[2]).toBe('Not counted since.');
  });

  test('tells the volume that was drawn from the stock, in all and on each', () => {
    const told = blocks(`
      stock G1 2026-01-09, GA3 2.0 mg, 20.0 mL
      lot MEC-26 Meconopsis racemosa, 20 seeds
      apply MEC-26 2026-02-08, G1 0.5 mL, 5 seedlings
      ^^^^^ here
    `);
    expect(told[0]).toBe('**Drops on MEC-26** of GA3 100 ppm (G1) · 2026-02-08 · 0.5 mL in all · on 5 seedlings');
    expect(told[3]).toContain('1. Put G1 on the growing point of each seedling: 0.5 mL in all, 0.1 mL on each.');
  });

  test('stands over the drops and the seedlings too', () => {
    const over = (mark: string) => blocks(`
      lot MEC-26 Meconopsis racemosa, 20 seeds
      apply MEC-26 2026-02-08, GA3 100 ppm, 1 drop, 1 seedling, 5 mL
${mark}
    `)[0];
    const expected = '**Drops on MEC-26** of GA3 100 ppm · 2026-02-08 · 1 drop on each · 5 mL in all · on 1 seedling';
    expect(over('                                            ^^^^^^ here')).toBe(expected);
    expect(over('                                                    ^^^^^^^^^^ here')).toBe(expected);
  });
});
