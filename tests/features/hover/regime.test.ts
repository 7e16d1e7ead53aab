import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a regime', () => {
  test('gives its stages in days from the start', () => {
    expect(hover(`
      regime twowinters, warm 20 C 60 days, chill 4 C 12 weeks, warm 15 C
             ^^^^^^^^^^ here
    `, '2026-02-10')).toMatchInlineSnapshot(`
      "**twowinters** · regime

      - warm 20 C 60 days: day 0 to day 60
      - chill 4 C 12 weeks: day 60 to day 144
      - warm 15 C: from day 144"
    `);
  });

  test('gives no day numbers behind a stage whose days depend on the calendar', () => {
    expect(hover(`
      regime cold, chill 4 C 3 months, warm 15 C 30 days
             ^^^^ here
    `, '2026-02-10')?.split('\n\n')[1]).toBe('- chill 4 C 3 months: from day 0\n- warm 15 C 30 days');
  });

  test('of a sowing gives the dates that are planned', () => {
    expect(hover(`
      --- regimes.germ
      regime cold, chill 4 C 3 months, warm 15 C 30 days
      --- 2026.germ
      sow VER-24 2026-01-11, regime cold
                                    ^^^^ here
    `, '2026-02-10')).toMatchInlineSnapshot(`
      "**cold** · regime, as planned from the sowing on 2026-01-11

      - chill 4 C 3 months: 2026-01-11 to 2026-04-11
      - warm 15 C 30 days: 2026-04-11 to 2026-05-11"
    `);
  });

  test('is none where nothing defines it', () => {
    expect(hover(`
      sow VER-24 2026-01-11, regime cold
                                    ^^^^ here
    `, '2026-02-10')).toBeUndefined();
  });

  test('that a batch is in names the temperatures of a stage that was changed on the way', () => {
    const lines = hover(`
      regime cold, chill 4 C 90 days, warm 15 C 30 days
      lot VER-24 Veratrum nigrum, 20 seeds
          ^^^^^^ here
      sow VER-24 2026-01-11, regime cold
      chill VER-24 2026-01-20, 12/2 C
      chill VER-24 2026-02-01, 4 C, 80 days
    `, '2026-02-10')!.split('\n');
    expect(lines).toContain('- chill 12/2 C, then 4 C: since 2026-01-20, 21 of 92 days, ends 2026-04-22 (planned from 2026-01-11)');
  });

  test('says of a batch that is over time and was moved what a move does not say', () => {
    const text = (more: string) => hover(`
      regime cold, warm 20 C 30 days, chill 4 C 90 days
      lot VER-24 Veratrum nigrum, 20 seeds
          ^^^^^^ here
      sow VER-24 2026-01-11, regime cold
      move VER-24 2026-02-08, at fridge
      ${more}
    `, '2026-02-20')!;
    const said = 'The batch was moved to fridge on 2026-02-08. If the chill stage started then, write a “chill” for that day: ' +
      'a “move” does not record a temperature.';
    expect(text('')).toContain(said);
    expect(text('chill VER-24 2026-02-08')).not.toContain('The batch was moved');
  });
});
