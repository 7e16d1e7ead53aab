import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a count', () => {
  const journal = `
    lot VER-24 Veratrum nigrum, 40 seeds
    sow VER-24 2026-01-11, 20 seeds
    count VER-24 2026-01-19, 0`;

  test('tells the day, the total so far and what is new', () => {
    // Wilson limits of 17/20 computed with R 4.2.2, prop.test without correction: 0.63958114, 0.94763125.
    expect(hover(`${journal}
    count VER-24 2026-01-25, 17, 4 emerged, 1 rotted
                             ^^ here
    count VER-24 2026-02-25, 2
    `, '2026-03-25')).toMatchInlineSnapshot(`
      "**VER-24** · Sunday 2026-01-25 · day 14 from the sowing on 2026-01-11

      **Germinated so far 17 of 20 = 85 %** (95 % Wilson interval 64 to 94.8 %; 20 sown)

      17 new germinated since the count on 2026-01-19.

      So far emerged 4 · rotted 1"
    `);
  });

  test('tells what is new of the very thing that was counted', () => {
    expect(hover(`${journal}
    count VER-24 2026-01-25, 17, 4 emerged, 1 rotted
                                            ^^^^^^^^ here
    `, '2026-03-25')?.split('\n\n')[2]).toBe('1 new rotted since the count on 2026-01-19.');
  });

  test('that found nothing says so in its total; the first one has nothing to compare with but day 0', () => {
    // Wilson limits of 0/20: Newcombe 1998, Stat Med 17:857-872.
    expect(hover(`${journal}
                             ^ here
    `, '2026-03-25')).toMatchInlineSnapshot(`
      "**VER-24** · Monday 2026-01-19 · day 8 from the sowing on 2026-01-11

      **Germinated so far 0 of 20 = 0 %** (95 % Wilson interval 0 to 16.1 %; 20 sown)"
    `);
    expect(hover(`
    lot VER-24 Veratrum nigrum, 40 seeds
    sow VER-24 2026-01-11, 20 seeds
    count VER-24 2026-01-25, =17 germinated
                             ^^^^^^^^^^^^^^ here
    `, '2026-03-25')?.split('\n\n')[2]).toBe('17 new germinated since the sowing on 2026-01-11.');
  });

  test('without a day 0 or a number of seeds says so', () => {
    expect(hover(`
    lot VER-24 Veratrum nigrum
    count VER-24 2026-01-25, 17
                             ^^ here
    `, '2026-03-25')).toMatchInlineSnapshot(`
      "**VER-24** · Sunday 2026-01-25 (no day 0: not yet sown, soaked or in a stage)

      Germinated so far 17; percent – (the number of seeds is unknown)"
    `);
  });

  test('of a batch that is not known is none', () => {
    expect(hover(`
    lot VER-24 Veratrum nigrum
    count VER-24/A 2026-01-25, 17
                               ^^ here
    `, '2026-03-25')).toBeUndefined();
  });
});
