import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['beyond-guides'] as const;

describe('a soak beyond every guide', () => {
  test('is hinted at where it is stronger, and where it is longer', () => {
    expectMarked(codes, `
      --- guides.germ
      guide Veratrum, GA3 250 ppm, 12 h, source "a list"
      guide Veratrum, GA3 500 ppm, 24 h, source "another list"
      --- 2026.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak VER-24 2026-01-12 19:00, GA3 501 ppm, 24 h
                                        ^^^^^^^ beyond-guides
      soak VER-24 2026-01-14 19:00, GA3 100 ppm, 25 h
                                                 ^^^^ beyond-guides
      lot PRI-24 Primula beesiana, 60 seeds
      soak PRI-24 2026-01-12 19:00, GA3 900 ppm, 24 h
    `);
  });

  test('takes the true strength of a stock, and a salt as its acid', () => {
    // 100 mg/L of the salt stand for 90.09 mg/L of the acid: 346.379 / 384.469.
    expectMarked(codes, `
      guide Veratrum, GA3 500 ppm, source "a list"
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      soak VER-24 2026-01-10 19:00, G1 10 mL, 24 h
                                    ^^ beyond-guides
      soak VER-24 2026-01-12 19:00, GA3K 554 ppm, 24 h
      soak VER-24 2026-01-14 19:00, GA3K 556 ppm, 24 h
                                         ^^^^^^^ beyond-guides
      soak VER-24 2026-01-16 19:00, GA3 1.5 mM, 24 h
                                        ^^^^^^ beyond-guides
    `);
  });

  test('takes a molarity and its ppm as one where they differ by rounding', () => {
    // 500 ppm of GA3 are 1.4435 mM (346.379 g/mol), and 1.44 mM are 498.8 ppm.
    expectMarked(codes, `
      guide Veratrum, GA3 1.44 mM, source "a list"
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak VER-24 2026-01-12 19:00, GA3 505 ppm, 24 h
                                        ^^^^^^^ beyond-guides
      soak VER-24 2026-01-14 19:00, GA3 1.45 mM, 24 h
                                        ^^^^^^^ beyond-guides
    `);
  });

  test('leaves out what nobody measured, and other agents', () => {
    expectMarked(codes, `
      guide Veratrum, GA3 250 ppm, 12 h, source "a list"
      guide Veratrum, GA3, KNO3 0.2 %, source "another list"
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 unmeasured, 24 h
      soak VER-24 2026-01-12 19:00, kinetin 500 ppm, 24 h
      soak VER-24 2026-01-14 19:00, water, 24 h
      soak VER-24 2026-01-16 19:00, GA3 250 ppm, KNO3 0.3 %, 12 h
                                                      ^^^^^ beyond-guides
    `);
  });

  test('is longer only where that is certain', () => {
    expectMarked(codes, `
      guide Veratrum, GA3 500 ppm, 12 h, source "a list"
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 100 ppm
      lift VER-24 2026-01-11
      soak VER-24 2026-01-12 19:00, GA3 100 ppm
           ^^^^^^ beyond-guides
      lift VER-24 2026-01-13 19:00
    `);
  });

  test('names the guides with their sources, those of the species first, and no more than four', () => {
    const guides = Array.from({ length: 5 }, (_, n) => `guide Veratrum, GA3 ${n + 1}00 ppm, source "list ${n}"\n`).join('');
    const [problem] = problemsIn('beyond-guides', `${guides}guide Veratrum nigrum, GA3 50 ppm
lot VER-24 Veratrum nigrum Pink, 60 seeds
soak VER-24 2026-01-10 19:00, GA3 800 ppm, 24 h
`);
    expect(problem?.message).toContain(
      'GA3 800 ppm is stronger than every guide for Veratrum nigrum Pink: GA3 50 ppm, GA3 100 ppm (list 0), GA3 200 ppm (list 1), ' +
      'GA3 300 ppm (list 2) and 2 more.');
  });
});
