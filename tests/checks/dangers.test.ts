import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

describe('bleach with what it must not meet', () => {
  const codes = ['dangerous-together'] as const;

  test('is marked in one liquid, by whatever name', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      agent citric, 192.12 g/mol, citric acid
      agent spirit, ethanol of the pharmacy
      agent cleaner, ammonia in water
      stock B1 2026-01-09, bleach 5 %, 1 L
      soak VER-24 2026-01-10 10:00, bleach 1 %, peroxide 1 %, 10 min
                                                ^^^^^^^^^^^^ dangerous-together
      soak VER-24 2026-02-10 10:00, citric 1 %, B1 5 mL, 50 mL, 10 min
                                                ^^^^^^^ dangerous-together
      soak VER-24 2026-03-10 10:00, bleach 1 %, spirit 5 %, 10 min
                                                ^^^^^^^^^^ dangerous-together
      soak VER-24 2026-04-10 10:00, cleaner 1 %, bleach 1 %, 10 min
                                                 ^^^^^^^^^^ dangerous-together
      soak VER-24 2026-05-10 10:00, bleach 1 %, ethephon 100 ppm, 10 min
                                                ^^^^^^^^^^^^^^^^ dangerous-together
      soak VER-24 2026-06-10 10:00, bleach 1 %, GA3 500 ppm, KNO3 0.2 %, 10 min
      soak VER-24 2026-07-10 10:00, bleach 0 %, peroxide 1 %, 10 min
    `);
    expect(problemsIn('dangerous-together', 'lot V Veratrum\nsoak V 2026-01-10, bleach 1 %, peroxide 1 %, 5 min')[0]?.message)
      .toBe('bleach and peroxide are in one liquid: together they give off oxygen so fast that it foams over and can burst '
        + 'the vessel. Never mix bleach with acid, alcohol, peroxide or ammonia. Rinse the seed well in between, and write the '
        + 'rinse as a soak in water.');
  });

  test('is marked straight after another soak, unless a rinse is written or days lie between', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds
      soak VER-24/A 2026-01-10 10:00, bleach 1 %, 10 min
      lift VER-24/A 2026-01-10 10:10
      soak VER-24/A 2026-01-10 10:15, peroxide 1 %, 10 min
                                      ^^^^^^^^^^^^ dangerous-together
      soak VER-24/B 2026-01-10 10:00, peroxide 1 %, 10 min
      soak VER-24/B 2026-01-10 10:15, bleach 1 %, 10 min
                                      ^^^^^^^^^^ dangerous-together
      soak VER-24/C 2026-01-10 10:00, bleach 1 %, 10 min
      soak VER-24/C 2026-01-10 10:15, water, 10 min
      soak VER-24/C 2026-01-10 10:30, peroxide 1 %, 10 min
      soak VER-24/D 2026-01-10 10:00, bleach 1 %, 10 min
      soak VER-24/D 2026-01-13 10:00, peroxide 1 %, 10 min
    `);
  });

  test('goes along with the seed that is split off', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 10:00, bleach 1 %, 10 min
      split VER-24 2026-01-10 10:20, A 10 seeds, B 10 seeds
      soak VER-24/A 2026-01-10 10:30, peroxide 1 %, 10 min
                                      ^^^^^^^^^^^^ dangerous-together
    `);
  });
});

test('seed that lies in a disinfectant for longer than is common is marked', () => {
  expectMarked(['disinfectant-too-long'], `
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds
    soak VER-24/A 2026-01-10 10:00, bleach 1 %, 30 min
    soak VER-24/B 2026-01-10 10:00, bleach 1 %, 3 h
                                                ^^^ disinfectant-too-long
    soak VER-24/C 2026-01-10 10:00, peroxide 3 %, until 2026-01-11 10:00
                                                  ^^^^^^^^^^^^^^^^^^^^^^ disinfectant-too-long
    soak VER-24/D 2026-01-10 10:00, GA3 500 ppm, 24 h
    soak VER-24/E 2026-01-10 10:00, peroxide 3 %
                                    ^^^^^^^^^^^^ disinfectant-too-long
  `, { now: '2026-01-10 14:00' });
});
