import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['nothing-held-back', 'no-control'] as const;

describe('a whole lot in a hormone', () => {
  test('is marked at the first soak of it', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 500 ppm, 24 h
           ^^^^^^ nothing-held-back
      sow VER-24 2026-01-11
      lot VER-25 Veratrum nigrum, 40 seeds
      split VER-25, A 20 seeds, B 20 seeds
      soak VER-25/A 2026-01-10, GA3 500 ppm, 24 h
           ^^^^^^^^ nothing-held-back
      soak VER-25/B 2026-01-10, ethephon 100 ppm, 24 h
      lot VER-26 Veratrum nigrum
      soak VER-26 2026-01-10, GA3 unmeasured
           ^^^^^^ nothing-held-back
    `);
  });

  test('may be one whose seeds nobody counted', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, 24 h
           ^^^^^^ nothing-held-back
      split VER-24 2026-01-11 20:00, A 20 seeds
      lot VER-25 Veratrum nigrum
      split VER-25, A 20 seeds
      soak VER-25/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    `);
  });

  test('may be soaked before it is divided, and from a stock', () => {
    expectMarked(codes, `
      stock G1 2026-01-09, GA3 20 mg, 40 mL
      lot VER-24 Veratrum nigrum, 40 seeds
      soak VER-24 2026-01-10 19:00, G1 10 mL, 24 h
           ^^^^^^ nothing-held-back
      split VER-24 2026-01-11 20:00, A 20 seeds, B 20 seeds
      sow VER-24/A 2026-01-12
    `);
  });

  test('is not whole where some stays, however little, or lies in water, bleach, nitrate or 0 ppm', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 41 seeds
      split VER-24, A 20 seeds, B 20 seeds
      soak VER-24/A 2026-01-10, GA3 500 ppm, 24 h
      soak VER-24/B 2026-01-10, GA3 250 ppm, 24 h
      lot VER-25 Veratrum nigrum, 40 seeds
      split VER-25, A 20 seeds, B 20 seeds
      soak VER-25/A 2026-01-10, GA3 500 ppm, 24 h
      soak VER-25/B 2026-01-10, bleach 1 %, 10 min
      lot VER-27 Veratrum nigrum, 40 seeds
      soak VER-27 2026-01-10, GA3 0 ppm, 24 h
      lot VER-26 Veratrum nigrum, 40 seeds
      soak VER-26 2026-01-10, KNO3 0.2 %, 24 h
      lot VER-27 Veratrum nigrum
      split VER-27, A 20 seeds
      soak VER-27/A 2026-01-10, GA3 500 ppm, 24 h
    `);
  });

  test('names the agents', () => {
    expect(problemsIn('nothing-held-back', 'lot V Veratrum\nsoak V 2026-01-10, GA3 500 ppm, kinetin 10 ppm, 24 h')[0]?.message)
      .toMatch(/^Every seed of V is treated with GA3 and kinetin; none is held back\./);
  });
});
