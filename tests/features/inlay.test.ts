import { describe, expect, test } from 'vitest';
import { hintsIn, type HintKinds } from '../../server/src/features/inlay.ts';
import { differences, variantsOf } from '../support/fixture.ts';
import { at, journalOf } from './journals.ts';

const all: HintKinds = { counts: true, soaks: true, stages: true, stocks: true };

/** Holds that the hints are those marked: each mark covers the last character of its line. */
function check(source: string, now = '2026-02-01 08:00', kinds = all) {
  for (const { name, fixture } of variantsOf(source)) {
    const journal = journalOf(fixture);
    const found = fixture.files.flatMap(({ name: file, text }) => hintsIn(journal, file, 0, text.length, kinds, at(now))
      .map(({ line, character, text: label }) => ({ file, line, start: character - 1, end: character, label })));
    expect(`${name}\n${differences(fixture, found)}`).toBe(`${name}\n`);
  }
}

describe('a count', () => {
  test('has the day, the total with its share, and the totals of what else it counts', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      sow V-1 2026-01-11
      count V-1 2026-01-19, 3
                            ^ day 8 · 3 of 24 = 12.5 %
      count V-1 2026-01-25, 2, 1 rotted
                                      ^ day 14 · 5 of 24 = 20.8 % · rotted 1
      count V-1 2026-02-01, =7, 4 emerged, 1 lost
                                                ^ day 21 · 7 of 23 = 30.4 % · emerged 4 · lost 1
    `);
  });

  test('has no share where the number of seeds is not known, and no day without a day 0', () => {
    check(`
      lot V-1 Veratrum nigrum
      count V-1 2026-01-19, 3
                            ^ germinated 3
    `);
  });

  test('has no totals after a record that cannot be read in full; those before it stay', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      sow V-1 2026-01-11
      count V-1 2026-01-19, 3
                            ^ day 8 · 3 of 24 = 12.5 %
      count V-1 2026-01-25, 2 sprouted
      count V-1 2026-02-01, 1
                            ^ day 21
    `);
  });

  test('has the place to go to while it has no numbers, and nothing where that is not known', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      split V-1, A 8 seeds, B 8 seeds, C 8 seeds
      chill V-1/A 2026-01-11, 4 C, at bag 3 slot 2
      move V-1/A 2026-01-20, at Bag 4 slot 1
      sow V-1/B 2026-01-11, 4 seeds, at tray 1
      sow V-1/B 2026-01-12, 4 seeds, at tray 2
      sow V-1/C 2026-01-11
      count V-1/A 2026-01-19,
                            ^ at bag 3 slot 2
      count V-1/A 2026-01-21,
                            ^ at Bag 4 slot 1
      count V-1/B 2026-01-21,
                            ^ at tray 1 and tray 2
      count V-1/C 2026-01-21,
      count V-1/A 2026-01-32,
    `, '2026-02-01 08:00', { ...all, stages: false });
    check('lot V-1 Veratrum nigrum, 24 seeds\nsow V-1 2026-01-11, at tray 1\ncount V-1 2026-01-21,', '2026-02-01 08:00', { ...all, counts: false });
  });

  test('has no share of more than there are', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      sow V-1 2026-01-11
      count V-1 2026-01-19, 25
                             ^ day 8 · germinated 25
    `);
  });
});

describe('a soak', () => {
  test('has the moment of its end; the lift its true length', () => {
    check(`
      zone Europe/Vienna
      lot V-1 Veratrum nigrum, 24 seeds
      split V-1, A 4 seeds, B 4 seeds, C 4 seeds, D 4 seeds, E 4 seeds
      soak V-1/A 2026-01-10 19:00, water, 24 h
                                             ^ out 2026-01-11 19:00
      soak V-1/B 2026-01-10 19:00, water, 24 h
                                             ^ lifted 2026-01-11 18:45 · 23.8 h
      lift V-1/B 2026-01-11 18:45
                                ^ 23.8 h
      soak V-1/C 2026-01-10 19:00, water, until 2026-01-11 07:30
                                                               ^ 12.5 h
      soak V-1/D 2026-01-10 19:00, water
                                       ^ no end recorded
      soak V-1/E 2026-01-10 19:00, water
                                       ^ out by 2026-01-12 at the latest
      sow V-1/E 2026-01-12
    `);
  });

  test('of a day when summer time begins is 23 h long', () => {
    check(`
      zone Europe/Vienna
      lot V-1 Veratrum nigrum, 24 seeds
      soak V-1 2026-03-28 19:00, water, 1 day
                                            ^ out 2026-03-29 19:00 · 23 h
    `);
  });
});

describe('a stage', () => {
  test('has its end and the day; one that is over how long it was', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      chill V-1 2026-01-02, 4 C, 90 days
                                       ^ 29 of 90 days, ended 2026-01-31
      warm V-1 2026-01-31, 20 C, 60 days
                                       ^ until 2026-04-01, day 1 of 60
      chill V-1 2026-04-01, 4 C, 30 days
                                       ^ until 2026-05-01
    `);
  });

  test('that is over time says for how long, for a day that is no part of it is none of its days', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      chill V-1 2025-12-05, 4 C, 56 days
                                       ^ 56 days, over since 2026-01-30 (2 days)
      lot V-2 Veratrum nigrum, 24 seeds
      chill V-2 2025-12-07, 4 C, 56 days
                                       ^ until 2026-02-01, day 56 of 56
      lot V-3 Veratrum nigrum, 24 seeds
      warm V-3 2025-12-01, 20 C, 1 day
                                     ^ 1 day, over since 2025-12-02 (61 days)
    `);
  });

  test('without a time span has the day alone', () => {
    check(`
      lot V-1 Veratrum nigrum, 24 seeds
      chill V-1 2026-01-02, 4 C
                              ^ day 30
    `);
  });
});

test('a line with a mistake has none: it is still being written', () => {
  check(`
    lot V-1 Veratrum nigrum, 24 seeds
    sow V-1 2026-01-11
    count V-1 2026-01-19, 3, 
    chill V-1 2026-01-19, 4 C, 90 day s
  `);
});

test('each kind can be left out', () => {
  const source = `
    lot V-1 Veratrum nigrum, 24 seeds
    soak V-1 2026-01-10 19:00, water, 24 h
    chill V-1 2026-01-12, 4 C
    count V-1 2026-01-19, 3`;
  const none: HintKinds = { counts: false, soaks: false, stages: false, stocks: false };
  check(source, undefined, none);
  check(`${source}\n                          ^ day 8 · 3 of 24 = 12.5 %`, undefined, { ...none, counts: true });
});

test('only the lines asked for are looked at', () => {
  const [{ fixture } = { fixture: undefined }] = variantsOf('lot V-1 Iris, 24 seeds\ncount V-1 2026-01-19, 3\ncount V-1 2026-01-20, 1');
  const found = hintsIn(journalOf(fixture!), 'journal.germ', 2, 2, all, at('2026-02-01'));
  expect(found).toEqual([{
    line: 2, character: 23, text: '4 of 24 = 16.7 %', more: 'Germinated so far, 95 % Wilson interval 6.7 to 35.9 %; 24 seeds, not sown.',
  }]);
});

test('a soak that is poured together has first what is in the dish; so have drops', () => {
  // 1000 ppm: 1000 * 5 / 20, 1000 * 5 / 7 and 2000 * 2 / 7, 1000 * 1 / 4.
  check(`
    lot V-1 Veratrum nigrum, 24 seeds
    stock G1 2026-01-09, GA3 20 mg, 20 mL
                                        ^ GA3 1000 ppm
    stock KN 2026-01-09, KNO3 1 g, 500 mL
                                        ^ KNO3 2000 ppm
    soak V-1 2026-01-10 19:00, G1 5 mL, 20 mL, 24 h
                                                  ^ GA3 250 ppm · out 2026-01-11 19:00
    soak V-1 2026-01-12 19:00, G1 5 mL, KN 2 mL, 24 h
                                                    ^ GA3 714 ppm + KNO3 571 ppm · out 2026-01-13 19:00
    soak V-1 2026-01-14 19:00, G1, 20 mL, 24 h
                                             ^ out 2026-01-15 19:00
    soak V-1 2026-01-16 19:00, GA3 500 ppm, 20 mL, 24 h
                                                      ^ out 2026-01-17 19:00
    apply V-1 2026-01-20, G1 1 mL, water 3 mL, 2 drops
                                                     ^ GA3 250 ppm
  `);
});

describe('a strength that does not stand on the line', () => {
  const bottles = `
      stock G1 2026-01-01, GA3 20 mg, 20 mL
                                          ^ GA3 1000 ppm
      dilute G2 2026-01-02, from G1 10 mL, to 20 mL
                                                  ^ GA3 500 ppm`;

  test('is told of what is made up, and of a soak that names a bottle alone', () => {
    check(`${bottles}
      lot V-1 Veratrum nigrum, 24 seeds
      split V-1, A 12 seeds, B 12 seeds
      soak V-1/A 2026-01-10 19:00, G2, 24 h
                                          ^ GA3 500 ppm · out 2026-01-11 19:00
      soak V-1/B 2026-01-10 19:00, G2 500 ppm, 24 h
                                                  ^ out 2026-01-11 19:00
    `);
  });

  test('is none for a label, for a bottle that a second record defines, and where it is not known', () => {
    check(`
      stock B1 2026-01-01, bleach 4 %, 100 mL
      stock G1 2026-01-01, GA3 20 mg, 20 mL
      stock G1 2026-01-02, GA3 40 mg, 20 mL
      stock G3 2026-01-02, GA3 40 mg
      powder P1 2026-01-02, GA3 1 g
    `);
  });

  test('is the most that it can be where the bottle came from one past its date', () => {
    check(`
      stock G1 2020-01-01, GA3 20 mg, 20 mL, keeps 1 year
                                                        ^ GA3 1000 ppm
      dilute G2 2026-01-02, from G1 10 mL, to 20 mL
                                                  ^ GA3 at most 500 ppm
    `);
  });
});
