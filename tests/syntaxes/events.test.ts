import { describe, expect, test } from 'vitest';
import { expectScopes } from './fixture.ts';
import { namesOf, tokenize } from './tokens.ts';

describe('events', () => {
  test('a subject is a lot with batches below it, then date and time', () => {
    expectScopes(`
      lift VER-24/A/1 2026-01-11 18:45
      ^^^^ keyword.control.record
           ^^^^^^ entity.name.function.lot
                 ^ punctuation.separator.batch
                  ^ variable.other.batch
                   ^ punctuation.separator.batch
                    ^ variable.other.batch
                      ^^^^^^^^^^ constant.numeric.date
                                 ^^^^^ constant.numeric.time
      day 2026-01-12
      ^^^ keyword.control.record
          ^^^^^^^^^^ constant.numeric.date
    `);
  });

  test('a split gives each batch its seeds', () => {
    expectScopes(`
      split VER-24, A 24 seeds, 2 12 seeds
      ^^^^^ keyword.control.record
                    ^ variable.other.batch
                      ^^ constant.numeric
                         ^^^^^ keyword.other.unit
                                ^ variable.other.batch
                                  ^^ constant.numeric
    `);
  });

  test('a soak takes agents, stocks, an end and nothing measured', () => {
    expectScopes(`
      soak VER-24/A 19:00, G2 10 mL, KNO3 0.2 %, until 2026-01-11 18:00, at bag 1, "kept, dark"
      ^^^^ keyword.control.record
                           ^^ entity.name.function.stock
                                 ^^ keyword.other.unit
                                     ^^^^ support.type.agent
                                          ^^^ constant.numeric
                                              ^ keyword.other.unit
                                                 ^^^^^ keyword.other.fact
                                                       ^^^^^^^^^^ constant.numeric.date
                                                                  ^^^^^ constant.numeric.time
                                                                         ^^ keyword.other.fact
                                                                            ^^^^^ string.unquoted.place
                                                                                   ^^^^^^^^^^^^ string.quoted.double
      soak VER-24/A, GA3 unmeasured, 24h
                     ^^^ support.type.agent
                         ^^^^^^^^^^ constant.language.unmeasured
                                     ^^ constant.numeric
                                       ^ keyword.other.unit
      soak VER-24/A, G2
                     ^^ entity.name.function.stock
    `);
  });

  test('a dose on seedlings', () => {
    expectScopes(`
      apply VER-24/B 2026-04-02, GA3 100 ppm, 2 drops, 4 seedlings
      ^^^^^ keyword.control.record
                                              ^ constant.numeric
                                                ^^^^^ keyword.other.unit
                                                       ^ constant.numeric
                                                         ^^^^^^^^^ keyword.other.unit
    `);
  });

  test('sowing, stages and moves', () => {
    expectScopes(`
      sow VER-24/A, 24 seeds, 18 C, in loam, regime woodland, at bag 4
      ^^^ keyword.control.record
                              ^^ constant.numeric
                                 ^ keyword.other.unit
                                    ^^ keyword.other.fact
                                       ^^^^ string.unquoted.text
                                             ^^^^^^ keyword.other.fact
                                                    ^^^^^^^^ entity.name.function.regime
                                                              ^^ keyword.other.fact
                                                                 ^^^^^ string.unquoted.place
      sow VER-24/A, in 3" pots, at bag 4
                       ^^^^^^^ string.unquoted.text
                                   ^^^^^ string.unquoted.place
      chill VER-24/A, 4 C, 90 days, at fridge
      ^^^^^ keyword.control.record
                              ^^^^ keyword.other.unit
      warm VER-24/A, 20/10 C, 60 days
      ^^^^ keyword.control.record
                     ^^^^^ constant.numeric
      move VER-24/A, at cold frame
      ^^^^ keyword.control.record
                        ^^^^^^^^^^ string.unquoted.place
      pot VER-24/A, 9 seedlings
      ^^^ keyword.control.record
                      ^^^^^^^^^ keyword.other.unit
    `);
  });

  test('counts tell stages, fates and qualities apart, and totals from what is new', () => {
    expectScopes(`
      count VER-24/A, 3, =9 emerged, 1 leaf, 2 rotted, 1 died, 1 lost, 2 leggy, 1 abnormal
      ^^^^^ keyword.control.record
                      ^ constant.numeric
                         ^ keyword.operator.total
                          ^ constant.numeric
                            ^^^^^^^ constant.language.stage
                                       ^^^^ constant.language.stage
                                               ^^^^^^ constant.language.fate
                                                         ^^^^ constant.language.fate
                                                                 ^^^^ constant.language.fate
                                                                         ^^^^^ constant.language.quality
                                                                                  ^^^^^^^^ constant.language.quality
      cut VER-24/A, 2 fresh, 1 hard, 1 dead, 0 empty
      ^^^ keyword.control.record
                      ^^^^^ constant.language.cut
                               ^^^^ constant.language.cut
                                       ^^^^ constant.language.cut
                                               ^^^^^ constant.language.cut
    `);
  });

  test('behind the first comma of a note, a reminder, a discard or a scarification all is text', () => {
    expectScopes(`
      note VER-24 2026-02-01, 3 germinated, or so, at "my guess
      ^^^^ keyword.control.record
                              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ string.unquoted.text
      due VER-24/A 2026-03-15, look, then write
      ^^^ keyword.control.record
                               ^^^^^^^^^^^^^^^^ string.unquoted.text
      discard VER-24/A, all soft, 12 of 12
      ^^^^^^^ keyword.control.record
                        ^^^^^^^^^^^^^^^^^^ string.unquoted.text
      scarify VER-24/A 17:00, nicked, 80 C water
      ^^^^^^^ keyword.control.record
                              ^^^^^^^^^^^^^^^^^^ string.unquoted.text
      photo VER-24/A, photos/day 21.jpg
      ^^^^^ keyword.control.record
                      ^^^^^^^^^^^^^^^^^ string.unquoted.path
    `);
  });
});

describe('slips that the eye should catch', () => {
  test('a decimal comma', () => {
    expectScopes(`
      soak VER-24/A 2026-01-10 19:00, GA3 0,5 g/L, 24 h
                                          ^^^ invalid.illegal.decimal-comma
                                                   ^^ constant.numeric
    `);
  });

  test('a date that does not begin with the year', () => {
    expectScopes(`
      sow VER-24/A 19/1/2026, 24 seeds
                   ^^^^^^^^^ invalid.illegal.date
      sow VER-24/A 19.1.26, 20/10 C
                   ^^^^^^^ invalid.illegal.date
                            ^^^^^ constant.numeric
    `);
  });

  test('a unit that is none stays without colour', () => {
    const [tokens = []] = tokenize(['soak VER-24/A, GA3 500 pmm, 24 h']);
    expect(tokens.filter(token => namesOf(token).length === 0).map(token => token.text.trim()).filter(Boolean)).toEqual(['pmm']);
  });
});
