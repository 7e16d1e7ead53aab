import { describe, expect, test } from 'vitest';
import { definitionsAt } from '../../server/src/features/definition.ts';
import { differences, variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf, marksOf } from './journals.ts';

/** From the mark `from`, which is where the link begins, to all marks `to`. */
function check(source: string): void {
  for (const { fixture } of variantsOf(source)) {
    const { file, position } = cursorOf(fixture, 'from');
    const links = definitionsAt(journalOf(fixture), file, position);
    const from = links.length > 0 ? [links[0]!.from] : [];
    const found = [...marksOf(from, 'from'), ...marksOf(links.map(({ to }) => to), 'to')];
    expect(differences(fixture, found)).toBe('');
  }
}

/** Nothing to jump to from the mark `from`. */
function checkNone(source: string): void {
  const { fixture } = variantsOf(source)[0]!;
  const { file, position } = cursorOf(fixture, 'from');
  expect(definitionsAt(journalOf(fixture), file, position)).toEqual([]);
}

describe('definition', () => {
  test('of the lot in a count leads to its record in another file', () => check(`
    --- 2025.germ
    lot VER-24 Veratrum nigrum, 60 seeds
        ^^^^^^ to
    --- 2026.germ
    count VER-24/A 2026-01-19, 3
          ^^^^^^ from
  `));

  test('of a lot at its own record is that record, so that an editor can show its uses', () => check(`
    lot VER-24 Veratrum nigrum
        ^^^^^^ from
        ^^^^^^ to
  `));

  test('of a lot that is defined twice is both', () => check(`
    --- a.germ
    lot VER-24 Veratrum nigrum
        ^^^^^^ to
    --- b.germ
    lot VER-24 Veratrum album
        ^^^^^^ to
    count VER-24 2026-01-19, 3
          ^^^^^^ from
  `));

  test('of a batch leads to its part in the split', () => check(`
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 24 seeds, B 24 seeds
                              ^ to
    count VER-24/B 2026-01-19, 3
          ^^^^^^^^ from
  `));

  test('of a stock in a soak leads to its record', () => check(`
    stock G1 2026-01-09, GA3 20 mg, 20 mL
          ^^ to
    soak VER-24 2026-01-10, G1 10 mL
                            ^^ from
  `));

  test('of the stock behind a dilution leads to its record', () => check(`
    dilute G2 2026-01-09, from G1 10 mL, to 20 mL
                               ^^ from
    stock G1 2026-01-09, GA3 20 mg, 20 mL
          ^^ to
  `));

  test('of a regime in a sowing leads to its record', () => check(`
    regime cold, chill 4 C 90 days
           ^^^^ to
    sow VER-24 2026-01-11, regime cold
                                  ^^^^ from
  `));

  test('of an agent that the journal declares leads to the declaration', () => check(`
    agent kelp, an extract
          ^^^^ to
    limit kelp, 100 ppm
    soak VER-24 2026-01-10, kelp 50 ppm
                            ^^^^ from
  `));

  test('of a built-in agent leads to the limit that holds for it on this plant', () => check(`
    lot PRI-25 Primula japonica
    limit GA3, 1000 ppm
    limit GA3, 500 ppm, for Primula
          ^^^ to
    soak PRI-25 2026-01-10, GA3 250 ppm
                            ^^^ from
  `));

  test('of a strength leads to its limit, for a salt to that of its acid', () => check(`
    limit GA3, 1000 ppm
          ^^^ to
    soak VER-24 2026-01-10, GA3K 250 ppm
                                 ^^^^^^^ from
  `));

  test('of the length of a soak leads to its limit', () => check(`
    limit soak, 12 h
          ^^^^ to
    soak VER-24 2026-01-10, water, 12 h
                                   ^^^^ from
  `));

  test('of the length of a stage is none', () => checkNone(`
    limit soak, 12 h
    chill VER-24 2026-01-10, 4 C, 90 days
                                  ^^^^^^^ from
  `));

  test('of a strength is none where the limit is a default', () => checkNone(`
    soak VER-24 2026-01-10, GA3 250 ppm
                                ^^^^^^^ from
  `));

  test('of what nothing defines is none', () => checkNone(`
    lot VER-24 Veratrum nigrum, 60 seeds
    count VER-24/A 2026-01-19, 3
                ^^ from
  `));
});
