import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

describe('a stock with another strength beside it than it has', () => {
  const codes = ['strength-of-stock', 'dose-above-limit', 'strength-slip'] as const;

  test('is marked at what is written; either strength may be above the limit', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 10 mL
      stock G2 2026-01-09, GA3 8 mg, 10 mL
      soak VER-24 2026-01-10 19:00, G1 500 ppm, 24 h
                                       ^^^^^^^ strength-of-stock
                                    ^^ dose-above-limit
      soak VER-24 2026-01-10 20:00, G2 500 ppm, 24 h
                                       ^^^^^^^ strength-of-stock
      soak VER-24 2026-01-10 21:00, G2 1500 ppm, 24 h
                                       ^^^^^^^^ strength-of-stock
                                       ^^^^^^^^ dose-above-limit
      soak VER-24 2026-01-10 22:00, G1 400 ppm 5 mL, 25 mL, 24 h
                                       ^^^^^^^ strength-of-stock
      soak VER-24 2026-01-12 19:00, G1 2 g/L, 24 h
                                       ^^^^^ dose-above-limit
      soak VER-24 2026-01-14 19:00, G1 20 mg, 24 h
                                       ^^^^^ strength-of-stock
                                    ^^ dose-above-limit
      soak VER-24 2026-01-16 19:00, G1 unmeasured, 24 h
                                       ^^^^^^^^^^ strength-of-stock
                                    ^^ dose-above-limit
      apply VER-24 2026-01-18, G1, 2 drops, 3 seedlings
                               ^^ dose-above-limit
    `);
  });

  test('is as good as right where nobody could tell them apart', () => {
    // 20 mg of 90 % in 18.5 mL are 973 ppm. A quarter by eye of 400 mg in 100 mL is 810 to 1210 ppm.
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18.5 mL
      stock G2 2026-01-09, GA3 400 mg halved 2 times, 100 mL
      soak VER-24 2026-01-10, G1 1000 ppm, 24 h
      soak VER-24 2026-01-11, G1 900 ppm, 24 h
                                 ^^^^^^^ strength-of-stock
      soak VER-24 2026-01-12, G2 820 ppm, 24 h
      soak VER-24 2026-01-13, G2 800 ppm, 24 h
                                 ^^^^^^^ strength-of-stock
    `);
  });

  test('can be turned into the agent with that strength', () => {
    const [problem] = problemsIn('strength-of-stock', `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 10 mL
      soak VER-24 2026-01-10 19:00, G1 500 ppm, 24 h
    `);
    expect(problem?.message).toContain('G1 holds GA3 2000 ppm, but 500 ppm is written beside it, so the strength here is unclear.');
    expect(problem?.fixes).toEqual([{ title: 'Change to “GA3 500 ppm”', start: 30, end: 40, text: 'GA3 500 ppm' }]);
  });
});

describe('an agent without its strength', () => {
  test('is hinted at, but not water, not a stock, and not what was said to be unmeasured', () => {
    expectMarked(['strength-missing'], `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      soak VER-24 2026-01-10 19:00, GA3, 24 h
                                    ^^^ strength-missing
      soak VER-24 2026-01-12 19:00, GA3 20 mg, 20 mL, 24 h
                                    ^^^ strength-missing
      soak VER-24 2026-01-14 19:00, water, G1 10 mL, 24 h
      soak VER-24 2026-01-16 19:00, GA3 unmeasured, 24 h
      apply VER-24 2026-01-18, KNO3, 2 drops, 3 seedlings
                               ^^^^ strength-missing
      soak VER-24 2026-01-20 19:00, GA3 500 pmm, 24 h
      guide Veratrum, GA3, source "a list"
    `);
  });

  test('with a mass and a volume is told what pure powder would be', () => {
    const [problem] = problemsIn('strength-missing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-12 19:00, GA3 20 mg, 20 mL, 24 h
    `);
    expect(problem?.message).toContain('Pure powder in that volume is 1000 ppm');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['GA3 1000 ppm']);
  });
});

describe('a stock without its strength', () => {
  test('is hinted at where the powder or the final volume is not written', () => {
    expectMarked(['strength-missing'], `
      agent kelp
      powder P1 2026-01-01, GA3 1 g
      stock A1 2026-01-09, GA3 50 mg
                           ^^^ strength-missing
      stock A2 2026-01-09, GA3 400 mg halved 2 times
                           ^^^ strength-missing
      stock A3 2026-01-09, GA3, 20 mL
                           ^^^ strength-missing
      stock A4 2026-01-09, GA3
                           ^^^ strength-missing
      stock A5 2026-01-09, from P1 20 mg
                                ^^ strength-missing
      stock A6 2026-01-09, kelp 50 mg
                           ^^^^ strength-missing
      dilute D1 2026-01-09, from A1 10 mL, to 20 mL
    `);
  });

  test('is not where it is whole, bought, unmeasured, or where something else is wrong with it', () => {
    expectMarked(['strength-missing'], `
      powder P1 2026-01-01, GA3 1 g
      stock A1 2026-01-09, GA3 50 mg, 50 mL
      stock A2 2026-01-09, peroxide 3 %
      stock A3 2026-01-09, GA3 unmeasured, 20 mL
      stock A4 2026-01-09, from P1 halved 2 times, 20 mL
      stock A5 2026-01-09, from PX 20 mg
      stock A6 2026-01-09, kelp 20 mg
      stock A7 2026-01-09, GA3 50 mg, 50 ml water
      stock A8 2026-01-09, water
      stock B1 2026-01-09, from P1, 20 mL
      stock A9 2026-01-09, smoke 50 mg, 50 mL
    `);
  });

  test.each([
    ['GA3 50 mg', 'The strength of G1 is missing. Write the final volume, such as “18 mL”.'],
    ['GA3, 20 mL', 'The strength of G1 is missing. Write the mass of the powder, such as “GA3 20 mg”. If you did not weigh it, write “GA3 unmeasured”.'],
    ['GA3', 'The strength of G1 is missing. Write the mass of the powder, such as “GA3 20 mg”, and the final volume, such as “18 mL”. '
      + 'If you did not weigh it, write “GA3 unmeasured”.'],
    ['from P1 20 mg', 'The strength of G1 is missing. Write the final volume, such as “18 mL”.'],
  ])('of %s says what to write', (facts, message) => {
    const found = problemsIn('strength-missing', `powder P1 2026-01-01, GA3 1 g\nstock G1 2026-01-09, ${facts}`);
    expect(found.map(each => each.message)).toEqual([message]);
  });
});

describe('a stock of two agents', () => {
  test('is a mistake at the second: it would be left out of the sums', () => {
    expectMarked(['repeated-fact'], `
      stock G1 2026-01-09, GA3 20 mg, KNO3 2 g, 1 L
                                      ^^^^^^^^ repeated-fact
      stock G2 2026-01-09, GA3 20 mg, 20 mL
    `);
  });
});

describe('powder that nobody measured', () => {
  test('is timed like any soak, and held against no strength', () => {
    expectMarked(['soak-too-long', 'dose-above-limit', 'beyond-guides', 'nothing-held-back', 'strength-slip', 'above-solubility'], `
      guide Thalictrum, GA3 250 ppm, 12 h, source "a list"
      lot THA-25 Thalictrum delavayi, 40 seeds
      split THA-25, A 20 seeds
      soak THA-25/A 2025-11-15 20:00, GA3 unmeasured, 30 h, at bag 4
                                                      ^^^^ soak-too-long
    `);
  });
});

describe('an agent by another name', () => {
  test.each([
    ['H2O2 3 %', 'peroxide'], ['NaOCl 1 %', 'bleach'], ['ga3 500 ppm', 'GA3'], ['KGA3 500 ppm', 'GA3K'],
  ])('%s is offered as %s', (dose, word) => {
    const [problem] = problemsIn('unknown-agent', `lot VER-24 Veratrum nigrum\nsoak VER-24 2026-01-10 19:00, ${dose}, 24 h`);
    expect(problem?.fixes.map(({ text }) => text)).toEqual([word]);
  });
});
