import type { ProblemCode } from '../../server/src/model/problems.ts';

/** Every problem that a line can have by itself, and what makes it. */
export const problemLines: Partial<Record<ProblemCode, string>> = {
  'unknown-line': `
    3 germinated
    ^ unknown-line
    2026-01-19
    ^^^^^^^^^^ unknown-line
    * count X, 3
    ^ unknown-line
    🌱 up
    ^^ unknown-line
  `,
  'unknown-keyword': `
    cuont VER-24, 3
    ^^^^^ unknown-keyword
    count: VER-24, 3
    ^^^^^^ unknown-keyword
    Radicles white and straight, 5 mm.
    ^^^^^^^^ unknown-keyword
    種子 VER-24
    ^^ unknown-keyword
  `,
  'missing-subject': `
    count
    ^^^^^ missing-subject
    count, 3
    ^^^^^ missing-subject
    count 2026-01-19, 3
    ^^^^^ missing-subject
    day
    ^^^ missing-subject
    lot VER-24, 60 seeds
        ^^^^^^ missing-subject
    lot VER-24 60 seeds
               ^^^^^^^^ missing-subject
    due VER-24, look for shoots
    ^^^ missing-subject
  `,
  'bad-id': `
    count VER-24/, 3
          ^^^^^^^ bad-id
    count 24-VER, 3
          ^^^^^^ bad-id
    stock G1/A 2026-01-09, GA3 20 mg, 18 mL
          ^^^^ bad-id
    split VER-24, B? 24 seeds, ( 3 seeds
                               ^ bad-id
                  ^^ bad-id
    note "VER-24", hard
         ^^^^^^^^ bad-id
    regime two winters, chill 4 C 90 days
           ^^^^^^^^^^^ bad-id
    soak VER-24, hot water, 24 h
                 ^^^^^^^^^ bad-id
    soak VER-24, GA 3 500 ppm
                 ^^^^ bad-id
    lot LIL 23 Lilium regale, 40 seeds
        ^^^^^^ bad-id
    lot 23-LIL Lilium regale, 40 seeds
        ^^^^^^ bad-id
    split VER-24, A=24, B: 24 seeds
                  ^^^^ bad-id
                        ^^ bad-id
  `,
  'stray-text': `
    count VER-24 3 rotted
                 ^^^^^^^^ stray-text
    lot VER-24 Veratrum nigrum 60 seeds
                               ^^^^^^^^ stray-text
    lot VER-24 Veratrum nigrum from own garden
                               ^^^^^^^^^^^^^^^ stray-text
    count VER-24, 3 germinated 1 rotted
                               ^^^^^^^^ stray-text
    count VER-24, 3 germinated and 1 rotted
                               ^^^^^^^^^^^^ stray-text
    count VER-24， 3
                ^^^ stray-text
    count VER-24 19:30 2026-01-19, 3
                       ^^^^^^^^^^ stray-text
    day 2026-01-19 19:30
                   ^^^^^ stray-text
    limit GA3 2026-01-19, 500 ppm
              ^^^^^^^^^^ stray-text
    move VER-24 2026-01-19 to cold frame
                           ^^^^^^^^^^^^^ stray-text
    count VER-24, 3 # three
                    ^^^^^^^ stray-text
    stock G1, GA3 20 mg, purity 90 % pure, 18 mL
                                     ^^^^ stray-text
  `,
  'unknown-fact': `
    count VER-24, 3 sprouted, 2 rottet
                    ^^^^^^^^ unknown-fact
                                ^^^^^^ unknown-fact
    sow VER-24, 24 sedes, 18 C
                   ^^^^^ unknown-fact
    count VER-24, 2026-01-19, 3
                  ^^^^^^^^^^ unknown-fact
    count VER-24, 3, 19:30
                     ^^^^^ unknown-fact
    lot VER-24 Veratrum nigrum, ~60 seeds, form a friend
                                ^ unknown-fact
                                           ^^^^ unknown-fact
    lot VER-24 Veratrum nigrum, 2 g
                                ^^^ unknown-fact
    count VER-24, germinated 3, two rotted
                  ^^^^^^^^^^^^ unknown-fact
                                ^^^^^^^^^^ unknown-fact
    count VER-24, ３ rotted, 三
                  ^^^^^^^^ unknown-fact
                            ^ unknown-fact
    warm VER-24, 20 C/10 C
                 ^^^^^^^^^ unknown-fact
    dilute G2, G1 10 mL, 20 mL
               ^^^^^^^^ unknown-fact
                         ^^^^^ unknown-fact
    stock G1, GA3 20 mg, 90 %, 18 mL
                         ^^^^ unknown-fact
    soak VER-24, 500 ppm GA3
                 ^^^^^^^^^^^ unknown-fact
    regime w, cold 4 C 90 days
              ^^^^ unknown-fact
    lift VER-24, gently
                 ^^^^^^ unknown-fact
    limit soak, 1000 ppm
                ^^^^^^^^ unknown-fact
    limit GA3, 24 h
               ^^^^ unknown-fact
    limit stock, 2 years, for Primula
                          ^^^^^^^^^^^ unknown-fact
  `,
  'repeated-fact': `
    soak VER-24, water, 24 h, 12 h
                              ^^^^ repeated-fact
    count VER-24, 3, 2 rotted, 1 germinated
                               ^^^^^^^^^^^^ repeated-fact
    soak VER-24, GA3 500 ppm, ga3 250 ppm
                              ^^^^^^^^^^^ repeated-fact
    agent kelp, extract, of the shop
                         ^^^^^^^^^^^ repeated-fact
  `,
  'missing-fact': `
    count VER-24
    ^^^^^ missing-fact
    move VER-24 2026-01-19
    ^^^^ missing-fact
    dilute G2 2026-01-09, from G1 10 mL
    ^^^^^^ missing-fact
    note VER-24
    ^^^^ missing-fact
    limit soak
    ^^^^^ missing-fact
  `,
  'missing-agent': `
    soak VER-24, 500 ppm, 24 h
                 ^^^^^^^ missing-agent
    stock G1, 20 mg, 18 mL
              ^^^^^ missing-agent
  `,
  'empty-fact': `
    count VER-24, 3,
                   ^ empty-fact
    count VER-24,, 3
                ^ empty-fact
    note VER-24,
               ^ empty-fact
  `,
  'not-counted': `
    count VER-24, 
                ^ not-counted
  `,
  'bad-number': `
    count VER-24, 2.5 rotted
                  ^^^ bad-number
    sow VER-24, -3 seeds, −18 C
                ^^ bad-number
                          ^^^ bad-number
    soak VER-24, water, 12-24 h
                        ^^^^^ bad-number
    soak VER-24, GA3 1/2 g/L, 0 h
                     ^^^ bad-number
                              ^^^ bad-number
    sow VER-24, =24 seeds
                ^^^ bad-number
    lot VER-24 Veratrum nigrum, 1 000 seeds
                                ^^^^^ bad-number
    chill VER-24, 4 C, 1.5 months
                       ^^^^^^^^^^ bad-number
    count VER-24, 9999999999
                  ^^^^^^^^^^ bad-number
    warm VER-24, 18 C, 1000000000 weeks
                       ^^^^^^^^^^^^^^^^ bad-number
    stock G1 2026-01-09, GA3 20 mg, 18 mL, keeps 101 years
                                                 ^^^^^^^^^ bad-number
    count VER-24, 1.2.3
                  ^^^^^ unknown-fact
    sow VER-24, 18.2.3.4 C
                ^^^^^^ unknown-fact
  `,
  'decimal-comma': `
    soak VER-24, GA3 0,5 g/L
                     ^^^ decimal-comma
    lot VER-24 Veratrum nigrum, 1,000 seeds
                                ^^^^^ decimal-comma
    count VER-24, 3,1 rotted
                  ^^^ decimal-comma
  `,
  'bad-unit': `
    soak VER-24, GA3 500 pmm
                         ^^^ bad-unit
    stock G1, GA3 20 mg, 18 mL, keeps 4 yaers
                                        ^^^^^ bad-unit
    dilute G2, from G1 10 mL, to 20 mg
                                    ^^ bad-unit
  `,
  'missing-unit': `
    sow VER-24, 24, 18
                ^^ missing-unit
                    ^^ missing-unit
    soak VER-24, GA3 500, 24
                     ^^^ missing-unit
                          ^^ missing-unit
  `,
  'bad-value': `
    sow VER-24, at
                ^^ bad-value
    split VER-24, A, 24 seeds B
                  ^ bad-value
                     ^^^^^^^^ bad-value
    soak VER-24, water, until tomorrow
                              ^^^^^^^^ bad-value
    lot VER-24 Veratrum nigrum, dormancy deep, collected
                                         ^^^^ bad-value
                                               ^^^^^^^^^ bad-value
    dilute G2, from 10 mL G1, to all
                    ^^^^^^^^ bad-value
                                 ^^^ bad-value
    stock G1, GA3 halved 2 times, purity 120 %, 18 mL
                  ^^^^^^ bad-value
                                         ^^^^^ bad-value
  `,
  'impossible-date': `
    day 2026-02-30
        ^^^^^^^^^^ impossible-date
    count VER-24 2026-13-01, 3
                 ^^^^^^^^^^ impossible-date
    lot VER-24 Veratrum nigrum, collected 2025-13
                                          ^^^^^^^ impossible-date
  `,
  'day-first-date': `
    day 19.1.2026
        ^^^^^^^^^ day-first-date
    count VER-24 3/4/2026, 3
                 ^^^^^^^^ day-first-date
    lot VER-24 Veratrum nigrum, collected 14/9/25
                                          ^^^^^^^ day-first-date
  `,
  'bad-date': `
    day 2026-1-9
        ^^^^^^^^ bad-date
    day tomorrow, maybe
        ^^^^^^^^ bad-date
                  ^^^^^ unknown-fact
    day 19 January 2026
        ^^^^^^^^^^^^^^^ bad-date
    count VER-24 2026-01-19T19:30, 3
                 ^^^^^^^^^^^^^^^^ bad-date
    count VER-24 20260119, 3
                 ^^^^^^^^ bad-date
    lot VER-24 Veratrum nigrum, collected autumn 2025
                                          ^^^^^^^^^^^ bad-date
    lot VER-24 Veratrum nigrum, collected Sept 2025
                                          ^^^^^^^^^ bad-date
    soak VER-24, water, until 2026-1-9 8:00
                              ^^^^^^^^ bad-date
  `,
  'bad-time': `
    soak VER-24 2026-01-10 25:00, water
                           ^^^^^ bad-time
    count VER-24 9.30, 3
                 ^^^^ bad-time
    count VER-24 2026-01-19 7:30 pm, 3
                            ^^^^^^^ bad-time
  `,
  'unclosed-quote': `
    lot VER-24 Veratrum nigrum, from "own garden, 60 seeds
                                     ^^^^^^^^^^^ unclosed-quote
  `,
};
