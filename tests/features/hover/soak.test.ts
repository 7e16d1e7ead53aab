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

      1. Put the seed into G2 and KNO3 0.2 %, so that all of it is covered.
      2. Label it: the batch, what it lies in, and when it began.
      3. Lift it after 24 h, rinse it with water, and note when."
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

      - In 2026-01-10 19:00, not lifted
      - In it now: 25 h so far, no end is written
      - Limit 24 h (default: common practice, no source)

      **soak** – seed goes into a liquid, or (unmeasured) into damp towel with a little powder"
    `);
  });

  test('that something else ended tells that nobody knows when', () => {
    expect(soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
      ^^^^ here
      sow VER-24 2026-01-12 07:00
    `, '2026-01-20')?.split('\n\n')[1]).toBe([
      '- In 2026-01-10 19:00, out by 2026-01-12 07:00 at the latest: “sow” follows, no “lift” is written',
      '- Length 0 to 36 h by the wall clock (the journal names no zone)',
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
      '⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Label it and lock it away from children, animals, food and drink. Treated seed is not food and not feed.',
    ]);
    expect(soak('bleach 1 %')![0]).toContain('Never mix bleach with acid, alcohol, peroxide or ammonia: poisonous gas.');
    expect(soak('water')).toBeNull();
  });
});
