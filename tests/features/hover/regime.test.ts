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
});
