import { describe, test } from 'vitest';
import { expectScopes } from './fixture.ts';

describe('definitions', () => {
  test('a lot has an id, a plant and facts', () => {
    expectScopes(`
      lot VER-24 Lilium martagon var. album, 60 seeds, collected 2025-09, from "fair, spring", dormancy PY+PD, at tin 1
      ^^^ storage.type.record
          ^^^^^^ entity.name.function.lot
                 ^^^^^^^^^^^^^^^^^^^^^^^^^^ entity.name.class.plant
                 ^^^^^^^^^^^^^^^^^^^^^^^^^^ markup.italic.plant
                                           ^ punctuation.separator.comma
                                             ^^ constant.numeric
                                                ^^^^^ keyword.other.unit
                                                       ^^^^^^^^^ keyword.other.fact
                                                                 ^^^^^^^ constant.numeric.date
                                                                          ^^^^ keyword.other.fact
                                                                               ^^^^^^^^^^^^^^ string.quoted.double
                                                                                               ^^^^^^^^ keyword.other.fact
                                                                                                        ^^^^^ constant.language.dormancy
                                                                                                                  ^^^^^ string.unquoted.place
    `);
  });

  test('a lot may bear a date behind the plant', () => {
    expectScopes(`
      lot VER-24 Lilium martagon 2026-01-09, 60 seeds
                 ^^^^^^^^^^^^^^^ entity.name.class.plant
                                 ^^^^^^^^^^ constant.numeric.date
    `);
  });

  test('a guide has a plant, agents, stages and a source', () => {
    expectScopes(`
      guide Prunus mahaleb, GA3 1000 ppm, kelp 2 %, 24 h, chill 4 C 1 month, source "A list, p. 3"
      ^^^^^ storage.type.record
            ^^^^^^^^^^^^^^ entity.name.class.plant
                            ^^^ support.type.agent
                                ^^^^ constant.numeric
                                     ^^^ keyword.other.unit
                                          ^^^^ support.type.agent.declared
                                                          ^^^^^ keyword.other.fact
                                                                  ^ keyword.other.unit
                                                                    ^ constant.numeric
                                                                      ^^^^^ keyword.other.unit
                                                                             ^^^^^^ keyword.other.fact
                                                                                    ^^^^^^^^^^^^^^ string.quoted.double
    `);
  });

  test('a stock has an id, an agent with its mass, a purity and a life', () => {
    expectScopes(`
      stock G-1 2026-01-09, GA3 100 mg halved 2 times, purity 75 % salt, bought 2025-03, 25 mL, keeps 4 years, at fridge door
      ^^^^^ storage.type.record
            ^^^ entity.name.function.stock
                ^^^^^^^^^^ constant.numeric.date
                            ^^^ support.type.agent
                                    ^^ keyword.other.unit
                                       ^^^^^^ keyword.other.fact
                                                ^^^^^ keyword.other.unit
                                                       ^^^^^^ keyword.other.fact
                                                                 ^ keyword.other.unit
                                                                   ^^^^ constant.language.purity
                                                                         ^^^^^^ keyword.other.fact
                                                                                ^^^^^^^ constant.numeric.date
                                                                                            ^^ keyword.other.unit
                                                                                                ^^^^^ keyword.other.fact
                                                                                                        ^^^^^ keyword.other.unit
                                                                                                                  ^^^^^^^^^^^ string.unquoted.place
    `);
  });

  test('a packet of powder has an agent with its mass, and a stock names the packet that it is made from', () => {
    expectScopes(`
      powder P-1 2026-01-09, GA3 1 g, purity 90 %, at freezer
      ^^^^^^ storage.type.record
             ^^^ entity.name.function.stock
                             ^^^ support.type.agent
                                   ^ keyword.other.unit
                                      ^^^^^^ keyword.other.fact
                                                      ^^^^^^^ string.unquoted.place
    `);
    expectScopes(`
      stock G-1 2026-01-09, from P-1 halved 2 times, purity 90 %, 18 mL
                            ^^^^ keyword.other.fact
                                 ^^^ entity.name.function.stock
                                     ^^^^^^ keyword.other.fact
                                                     ^^^^^^ keyword.other.fact
                                                                     ^^ keyword.other.unit
    `);
  });

  test('a dilution names the stock that it is made from', () => {
    expectScopes(`
      dilute G-2 2026-01-09, from G-1 10 mL, to 0.02 L
      ^^^^^^ storage.type.record
             ^^^ entity.name.function.stock
                             ^^^^ keyword.other.fact
                                  ^^^ entity.name.function.stock
                                      ^^ constant.numeric
                                         ^^ keyword.other.unit
                                             ^^ keyword.other.fact
                                                ^^^^ constant.numeric
                                                     ^ keyword.other.unit
    `);
  });

  test('a regime is a row of stages', () => {
    expectScopes(`
      regime two-winters, warm 20/10 °C 12 weeks, chill 39 F 90 days
      ^^^^^^ storage.type.record
             ^^^^^^^^^^^ entity.name.function.regime
                          ^^^^ keyword.other.fact
                               ^^^^^ constant.numeric
                                     ^^ keyword.other.unit
                                        ^^ constant.numeric
                                           ^^^^^ keyword.other.unit
                                                  ^^^^^ keyword.other.fact
                                                           ^ keyword.other.unit
    `);
  });

  test('limits, agents and the zone', () => {
    expectScopes(`
      limit soak, 24 h
            ^^^^ keyword.other.limited
                     ^ keyword.other.unit
      limit GA4+7, 500 mg/L, for Primula
            ^^^^^ support.type.agent
                       ^^^^ keyword.other.unit
                             ^^^ keyword.other.fact
                                 ^^^^^^^ entity.name.class.plant
      agent kelp, 76.12 g/mol, solubility 100 g/L, seaweed of own making
      ^^^^^ storage.type.record
            ^^^^ support.type.agent
                        ^^^^^ keyword.other.unit
                               ^^^^^^^^^^ keyword.other.fact
                                              ^^^ keyword.other.unit
                                                   ^^^^^^^^^^^^^^^^^^^^^ string.unquoted.text
      zone America/Argentina/Ushuaia
      ^^^^ storage.type.record
           ^^^^^^^^^^^^^^^^^^^^^^^^^ string.unquoted.zone
    `);
  });
});
