import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['strength-slip', 'above-solubility', 'dose-above-limit'] as const;

describe('a dose', () => {
  test('above the limit is marked at its strength, in soaks and drops; at the limit it is right', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 1000 ppm, 24 h
      soak VER-24 2026-01-12, GA3 1001 ppm, 24 h
                                  ^^^^^^^^ dose-above-limit
      soak VER-24 2026-01-14, KNO3 0.2 %, GA3 0.1 %, 24 h
      soak VER-24 2026-01-16, GA3 1.1 g/L, 24 h
                                  ^^^^^^^ dose-above-limit
      apply VER-24 2026-04-16, GA3 2000 ppm, 2 drops
                                   ^^^^^^^^ dose-above-limit
    `);
  });

  test('of a salt is judged by the acid that it stands for', () => {
    // 346.379 g/mol of the acid in 384.469 g/mol of the salt: 1000 ppm of it in 1109.97 ppm.
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3K 1109 ppm, 24 h
      soak VER-24 2026-01-12, GA3K 1111 ppm, 24 h
                                   ^^^^^^^^ dose-above-limit
    `);
  });

  test('of a salt is judged as it is written, where the limit is for the salt', () => {
    expectMarked(codes, `
      limit GA3K, 1100 ppm
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3K 1100 ppm, 24 h
      soak VER-24 2026-01-12, GA3K 1101 ppm, 24 h
                                   ^^^^^^^^^ dose-above-limit
    `.replace('^^^^^^^^^', '^^^^^^^^'));
  });

  test('of a salt and its acid is judged by the stricter of their limits, in whatever order they stand', () => {
    // 400 ppm of the salt are 360.4 ppm of the acid: 1560.4 in all, above 1500, though the salt alone may be 2000.
    expectMarked(codes, `
      limit GA3, 1500 ppm
      limit GA3K, 2000 ppm
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 1200 ppm, GA3K 400 ppm, 24 h
                                                 ^^^^^^^ dose-above-limit
      soak VER-24 2026-01-12, GA3K 400 ppm, GA3 1200 ppm, 24 h
                                                ^^^^^^^^ dose-above-limit
      soak VER-24 2026-01-14, GA3 1100 ppm, GA3K 400 ppm, 24 h
      soak VER-24 2026-01-16, GA3K 1900 ppm, 24 h
    `);
  });

  test('from a stock is judged by the true strength of the stock', () => {
    const source = `
      stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL
      stock G2 2026-01-09, GA3 21 mg, 20 mL
      dilute G3 2026-01-09, from G2 10 mL, to 20 mL
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, G1 10 mL, 24 h
      soak VER-24 2026-01-12, G2 5 mL, 24 h
                              ^^ dose-above-limit
      soak VER-24 2026-01-14, G3 10 mL, 24 h
    `;
    expectMarked(codes, source);
    expect(problemsIn('dose-above-limit', source.replace('^^ dose-above-limit', ''))[0]?.message)
      .toMatch(/^GA3 1050 ppm \(stock G2\) is above the limit of 1000 ppm/);
  });

  test('is judged by the limit for the genus before that for all; the later one of two for the same counts', () => {
    expectMarked(codes, `
      --- 2026.germ
      lot PRI-24 Primula rosea, 60 seeds
      soak PRI-24 2026-01-10, GA3 400 ppm, 24 h
      soak PRI-24 2026-01-12, GA3 401 ppm, 24 h
                                  ^^^^^^^ dose-above-limit
      lot PRL-24 Primulina tabacum, 60 seeds
      soak PRL-24 2026-01-12, GA3 401 ppm, 24 h
      soak PRL-24 2026-01-14, GA3 701 ppm, 24 h
                                  ^^^^^^^ dose-above-limit
      --- limits.germ
      limit GA3, 400 ppm, for primula
      limit GA3, 9000 ppm
      limit GA3, 700 ppm
    `);
  });

  test('has no limit where none is written and nobody set one', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, KNO3 3 %, ethephon 2000 ppm, 24 h
    `);
  });

  test('in a unit that was not meant is marked as that alone, and what was meant is offered', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 500 %, 24 h
                                  ^^^^^ strength-slip
      soak VER-24 2026-01-12, GA3 0.5 ppm, 24 h
                                  ^^^^^^^ strength-slip
      soak VER-24 2026-01-14, GA3 500 g/L, 24 h
                                  ^^^^^^^ strength-slip
      soak VER-24 2026-01-16, GA3 5 ppm, 24 h
      soak VER-24 2026-01-18, GA3 0 ppm, 24 h
    `);
    const [problem] = problemsIn('strength-slip', 'lot V Veratrum\nsoak V 2026-01-10, GA3 500 %, 24 h');
    expect(problem?.message).toBe('GA3 500 % is far from what growers use, so the unit is probably wrong. Did you mean 500 ppm? Growers use 5 to 5000 ppm.');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['500 ppm']);
  });

  test('that does not dissolve is marked as that alone', () => {
    // 5 g/L of GA3: a supplier's product data page.
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-12, GA3 5001 ppm, 24 h
                                  ^^^^^^^^ above-solubility
      agent kelp, solubility 1 g/L
      soak VER-24 2026-01-14, kelp 1 g/L, 24 h
      soak VER-24 2026-01-16, kelp 1001 ppm, 24 h
                                   ^^^^^^^^ above-solubility
      stock G1 2026-01-09, GA3 60 mg, 10 mL
                           ^^^^^^^^^ above-solubility
      stock G2 2026-01-09, GA3 50 mg, 10 mL
    `);
  });

  test('that nobody measured is judged by nothing', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 unmeasured, 24 h
      soak VER-24 2026-01-12, GA3, 24 h
      soak VER-24 2026-01-14, unheard 5000 %, 24 h
    `);
  });
});
