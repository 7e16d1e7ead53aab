import { describe, test } from 'vitest';
import { expectMarked } from './marked.ts';

const codes = ['sown-before-collected'] as const;
const now = '2026-12-01';

describe('seed used before it was collected', () => {
  test('is marked at the first of its records, for each batch', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2026-09-14
      split VER-24, A 20 seeds, B 20 seeds
      soak VER-24/A 2026-09-13 19:00, water, 12 h
                    ^^^^^^^^^^ sown-before-collected
      sow VER-24/A 2026-09-13
      sow VER-24/B 2026-09-14
      day 2026-09-01
      chill VER-24, 4 C
            ^^^^^^ sown-before-collected
    `, { now });
  });

  test('is measured by the first day that a month or a year can mean', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2026-09
      sow VER-24 2026-09-01
      lot VER-25 Veratrum nigrum, 60 seeds, collected 2026
      sow VER-25 2025-12-31
                 ^^^^^^^^^^ sown-before-collected
      lot VER-26 Veratrum nigrum, 60 seeds
      sow VER-26 1990-01-01
    `, { now });
  });
});
