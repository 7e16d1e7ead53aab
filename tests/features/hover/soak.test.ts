import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** Without the caution at the end, which has a test of its own. */
function soakHover(source: string, now: string): string | undefined {
  return hover(source, now)?.split('\n\n⚠')[0];
}

describe('hover on a soak', () => {
  test('tells from when to when, how long, the limits, and the true strength of a stock', () => {
    expect(soakHover(`
      --- limits.germ
      zone Europe/Vienna
      limit soak, 20 h
      limit GA3, 800 ppm, for Veratrum
      --- 2026.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      soak VER-24/A 2026-01-10 19:00, G2 10 mL, KNO3 0.2 %, 24 h
      ^^^^ here
      lift VER-24/A 2026-01-11 18:45
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**Soak of VER-24/A** in GA3 500 ppm (G2) + KNO3 0.2 %

      - In 2026-01-10 19:00, lifted 2026-01-11 18:45
      - Length 23.8 h; 24 h planned
      - Limit 20 h (the “limit” record in limits.germ, line 2)

      GA3 500 ppm (G2): the strength of the stock, 62.5 % of the limit of 800 ppm (the “limit” record in limits.germ, line 3)

      1. Weigh 20 mg of KNO3 powder on a balance that shows 1 mg.
      2. Stir the powder into 10 mL of G2 until it has dissolved.
      3. Put the seed into 10 mL of G2 with KNO3 0.2 %, and cover all of it.
      4. Label it: the batch, the liquid, and when the soak began.
      5. Lift it after 24 h, rinse it with water, and note when.

      20 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.

      Assumed: % means weight in volume: 1 % is 10 g/L. No purity is given, so the powder counts as pure. A weaker powder makes a weaker solution."
    `);
  });

  test('that goes on tells how long the seed has been in it, by the wall clock where no zone is named', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 24 h
                                           ^^^^ here
    `, '2026-01-11 00:30')).toMatchInlineSnapshot(`
      "**Soak of VER-24** in water

      - In 2026-01-10 19:00, out 2026-01-11 19:00
      - Length 24 h
      - In it now: 5.5 h by the wall clock so far
      - Limit 24 h (default: common practice, no source)"
    `);
  });

  test('with no end tells that none is written', () => {
    expect(soakHover(`
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
      ^^^^ here
    `, '2026-01-11 20:00')).toMatchInlineSnapshot(`
      "**Soak of VER-24** in water

      - In 2026-01-10 19:00, no end recorded
      - In it now: 25 h so far, no end recorded
      - Limit 24 h (default: common practice, no source)

      **soak** – seed goes into a liquid, or onto a damp towel with unmeasured powder"
    `);
  });

  test('that something else ended tells that nobody knows when', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
      ^^^^ here
      sow VER-24 2026-01-12 07:00
    `, '2026-01-20')?.split('\n\n')[1]).toBe([
      '- In 2026-01-10 19:00, out by 2026-01-12 07:00 at the latest: “sow” follows, no “lift” recorded',
      '- Length 0 to 36 h by the wall clock (the journal has no “zone” record)',
      '- Limit 24 h (default: common practice, no source)',
    ].join('\n'));
  });

  test('with powder on a towel has no ppm, and says why', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 unmeasured
      ^^^^ here
    `, '2026-01-10 20:00')?.split('\n\n')[2]).toMatch(
      /^GA3 unmeasured: Nothing was measured, so .* no ppm/);
  });

  test('above the limit says so', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 2000 ppm, 24 h
                                                  ^^^^ here
    `, '2026-02-10')?.split('\n\n')[2]).toBe(
      'GA3 2000 ppm: above the limit of 1000 ppm (default: common practice, no source): 2 times as strong');
  });

  test('stands over its lift too', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
      lift VER-24 2026-01-11 19:00
      ^^^^ here
    `, '2026-02-10')?.split('\n\n')[0]).toBe('**Soak of VER-24** in water');
  });

  test('in a hormone ends with one caution, in water with none', () => {
    const soak = (agent: string) => hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, ${agent}, 24 h
      ^^^^ here
    `, '2026-02-10')!.match(/⚠.*/g);
    expect(soak('GA3 500 ppm')).toEqual([
      '⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink. Treated seed is neither food nor feed.',
    ]);
    expect(soak('bleach 1 %')![0]).toContain('Never mix bleach with acid, alcohol, peroxide or ammonia: it gives off poisonous gas.');
    expect(soak('water')).toBeNull();
  });

  test('of several powders weighs each, with the cautions for powder', () => {
    const text = hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, KNO3 0.25 %, 30 mL, 24 h
      ^^^^ here
    `, '2026-02-10')!;
    // 500 mg/L and 2.5 g/L of 30 mL.
    expect(text).toContain(`1. Weigh 15 mg of GA3 powder on a balance that shows 1 mg.
2. Wet the powder with a few drops of alcohol and stir until it has dissolved.
3. Weigh 75 mg of KNO3 powder on a balance that shows 1 mg.
4. Stir the powder into some of the water until it has dissolved.
5. Make it up to 30 mL with water, and mix well.
6. Put the seed into 30 mL of GA3 500 ppm with KNO3 0.25 %, and cover all of it.`);
    expect(text).toMatch(/⚠.*Powder: keep it out of eyes and lungs.*Alcohol burns/);
  });

  test('says of each powder what rounding makes of it', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, KNO3 20 mM, 100 mL, 24 h
      ^^^^ here
    `, '2026-02-10')).toContain('6. It then holds KNO3 19.8 mM, 1.09 % below the 20 mM you wrote.');
  });

  test('gives no way to make what has a liquid in it, whose own strength nobody says, nor water with 0 ppm', () => {
    const first = (liquid: string) => hover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, ${liquid}, 20 mL, 24 h
      ^^^^ here
    `, '2026-02-10')!.split('\n').find(line => line.startsWith('1. '));
    expect(first('bleach 1 %, GA3 500 ppm')).toMatch(/^1\. Put the seed into 20 mL of bleach 1 %/);
    expect(first('GA3 0 ppm')).toMatch(/^1\. Put the seed into 20 mL of GA3 0 ppm/);
  });
});

describe('hover on a soak that is poured together', () => {
  const bottles = `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G2 2026-01-09, GA3 10 mg, 20 mL
      stock KN 2026-01-09, KNO3 1 g, 500 mL`;

  test('tells what is in the dish, of what, and how it is mixed', () => {
    expect(soakHover(`${bottles}
      soak VER-24 2026-01-10 19:00, G2 5 mL, KN 2 mL, 24 h
      ^^^^ here
    `, '2026-02-03')).toMatchInlineSnapshot(`
      "**Soak of VER-24** in GA3 357 ppm (G2) + KNO3 571 ppm (KN)

      - In 2026-01-10 19:00, out 2026-01-11 19:00
      - Length 24 h
      - Limit 24 h (default: common practice, no source)

      GA3 357 ppm (G2): in the dish, from 5 mL of G2 (500 ppm), 35.7 % of the limit of 1000 ppm (default: common practice, no source)

      KNO3 571 ppm (KN): in the dish, from 2 mL of KN (2000 ppm)

      1. Take 5 mL of G2 with a 10 mL syringe marked every 0.2 mL.
      2. Take 2 mL of KN with a 1 mL syringe marked every 0.01 mL, filled 2 times.
      3. Pour them together and mix well: 7 mL in all.
      4. Put the seed into 7 mL of GA3 357 ppm with KNO3 571 ppm, and cover all of it.
      5. Label it: the batch, the liquid, and when the soak began.
      6. Lift it after 24 h, rinse it with water, and note when."
    `);
  });

  test('of a salt and its acid tells how both together stand to the limit', () => {
    // 500 ppm and 346.379 / 384.469 of 400 ppm, which are 360.4 ppm.
    expect(soakHover(`${bottles}
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, GA3K 400 ppm, 24 h
      ^^^^ here
    `, '2026-02-03')!.split('\n').filter(line => line.includes('limit of'))).toEqual([
      'GA3 500 ppm and GA3K 400 ppm count as GA3 860 ppm together: 86 % of the limit of 1000 ppm (default: common practice, no source)',
    ]);
  });

  test('up to a total has the rest as water', () => {
    expect(soakHover(`${bottles}
      soak VER-24 2026-01-10 19:00, G2 5 mL, KNO3 0.5 %, 20 mL, 24 h
      ^^^^ here
    `, '2026-02-03')!.split('\n').filter(line => /^\d|^GA3/.test(line))).toMatchInlineSnapshot(`
      [
        "GA3 125 ppm (G2): in the dish, from 5 mL of G2 (500 ppm), 12.5 % of the limit of 1000 ppm (default: common practice, no source)",
        "1. Take 5 mL of G2 with a 10 mL syringe marked every 0.2 mL.",
        "2. Make it up to 20 mL with water (15 mL of water), and mix well.",
        "3. Weigh 100 mg of KNO3 powder on a scale that shows 0.01 g.",
        "4. Stir the powder into 20 mL of the mixture until it has dissolved.",
        "5. Put the seed into 20 mL of GA3 125 ppm with KNO3 0.5 %, and cover all of it.",
        "6. Label it: the batch, the liquid, and when the soak began.",
        "7. Lift it after 24 h, rinse it with water, and note when.",
      ]
    `);
  });

  test('without a volume that is needed has no strength, and says why', () => {
    expect(soakHover(`${bottles}
      soak VER-24 2026-01-10 19:00, G2, KN 5 mL, 20 mL, 24 h
      ^^^^ here
    `, '2026-02-03')).toContain('GA3 of unknown strength (G2): The volume of each part is not recorded.');
  });
});
