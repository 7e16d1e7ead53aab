import { describe, expect, test } from 'vitest';
import { referencesAt } from '../../server/src/features/references.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { differences, variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf, marksOf } from './journals.ts';

/** From the mark `here` to all marks `use`; `declared` are those that go with the declaration alone. */
function check(source: string): void {
  for (const { fixture } of variantsOf(source)) {
    const { file, position } = cursorOf(fixture, 'here');
    const journal = journalOf(fixture);
    const uses = referencesAt(journal, file, position, false);
    const all = referencesAt(journal, file, position, true);
    const isUse = (place: object) => uses.some(use => JSON.stringify(use) === JSON.stringify(place));
    const marks = [...marksOf(uses, 'use'), ...marksOf(all.filter(place => !isUse(place)), 'declared')];
    expect(differences({ ...fixture, expected: fixture.expected.filter(({ label }) => label !== 'here') }, marks)).toBe('');
  }
}

describe('references', () => {
  test('to a lot are all records about it and its batches, in all files', () => check(`
    --- 2025.germ
    lot VER-24 Veratrum nigrum, 60 seeds
        ^^^^^^ declared
    split VER-24, A 24 seeds
          ^^^^^^ use
    lot VER-25 Veratrum album
    note VER-24 2025-12-01, hard
         ^^^^^^ use
    --- 2026.germ
    count VER-24/A 2026-01-19, 3
          ^^^^^^ here
          ^^^^^^ use
      VER-24/A looks well.
    count VER-25 2026-01-19, 3
    due VER-24/A 2026-03-01, look
        ^^^^^^ use
  `));

  test('to a batch are its records and those of its children, not those of its siblings', () => check(`
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 24 seeds, AB 24 seeds
                  ^ declared
                  ^ here
    split VER-24/A 2026-01-02, 1 12 seeds
          ^^^^^^^^ use
    count VER-24/A/1 2026-01-19, 3
          ^^^^^^^^ use
    count VER-24/AB 2026-01-19, 3
    note VER-24/A 2026-01-20, soft
         ^^^^^^^^ use
  `));

  test('to a stock are what was taken from it and what is said of it', () => check(`
    stock G1 2026-01-09, GA3 20 mg, 20 mL
          ^^ declared
    dilute G2 2026-01-09, from G1 10 mL, to 20 mL
                               ^^ use
    soak VER-24 2026-01-10, G1 10 mL
                            ^^ here
                            ^^ use
    note G1 2026-02-01, still clear
         ^^ use
  `));

  test('to a regime are the sowings under it', () => check(`
    regime cold, chill 4 C 90 days
           ^^^^ here
           ^^^^ declared
    sow VER-24 2026-01-11, regime cold
                                  ^^^^ use
  `));

  test('to an agent of the journal are its uses and its limits', () => check(`
    agent kelp, an extract
          ^^^^ declared
          ^^^^ here
    soak VER-24 2026-01-10, kelp 50 ppm, GA3 500 ppm
                            ^^^^ use
    limit kelp, 100 ppm
          ^^^^ use
  `));

  test('to a built-in agent are its uses in all files, and its limits', () => check(`
    --- a.germ
    limit GA3, 1000 ppm
          ^^^ use
    stock G1 2026-01-09, GA3 20 mg, 20 mL
                         ^^^ use
    --- b.germ
    soak VER-24 2026-01-10, KNO3 0.2 %, GA3 500 ppm
                                        ^^^ use
                                        ^^^ here
    guide Veratrum, GA3 500 ppm
                    ^^^ use
  `));

  test('come in the order of the files and of their lines, in whatever order the files were read', () => {
    const files = {
      'b.germ': 'soak VER-24 2026-01-10, GA3 500 ppm\nlimit GA3, 1000 ppm\nnote G1 2026-02-01, clear\n',
      'a.germ': 'limit GA3, 900 ppm\nstock G1 2026-01-09, GA3 20 mg, 20 mL\n',
      'c.germ': 'dilute G2 2026-01-09, from G1 10 mL, to 20 mL\nguide Veratrum, GA3 500 ppm\n',
    };
    const placesOf = (names: readonly (keyof typeof files)[], file: string, line: number, character: number) => {
      const journal = new Journal();
      for (const name of names) journal.set(name, files[name]);
      return referencesAt(journal, file, { line, character }, true).map(place => `${place.file}:${place.line}:${place.start}`);
    };
    for (const names of [['a.germ', 'b.germ', 'c.germ'], ['c.germ', 'b.germ', 'a.germ'], ['b.germ', 'c.germ', 'a.germ']] as const) {
      expect(placesOf(names, 'a.germ', 0, 7)).toEqual(['a.germ:0:6', 'a.germ:1:21', 'b.germ:0:24', 'b.germ:1:6', 'c.germ:1:16']);
      expect(placesOf(names, 'a.germ', 1, 7)).toEqual(['a.germ:1:6', 'b.germ:2:5', 'c.germ:0:27']);
    }
  });

  test('to what has no name are none', () => check(`
    count VER-24 2026-01-19, 3
                             ^ here
  `));
});
