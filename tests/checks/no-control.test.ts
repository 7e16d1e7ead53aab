import { describe, test } from 'vitest';
import { expectMarked } from './marked.ts';

const codes = ['no-control', 'nothing-held-back'] as const;

describe('treated seed without untreated seed beside it', () => {
  test('is marked once, where the first of it was sown', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      day 2026-01-10
      soak VER-24/A 19:00, GA3 500 ppm, 24 h
      soak VER-24/B 19:00, KNO3 0.2 %, 24 h
      day 2026-01-12
      sow VER-24/A
          ^^^^^^^^ no-control
      sow VER-24/B
    `);
  });

  test('has its control where some was sown dry, out of water, out of bleach or out of 0 ppm', () => {
    for (const soak of ['# dry', 'soak VER-24/B 2026-01-10, water, 24 h', 'soak VER-24/B 2026-01-10, bleach 1 %, 10 min', 'soak VER-24/B 2026-01-10, GA3 0 ppm, 24 h']) {
      expectMarked(codes, `
        lot VER-24 Veratrum nigrum, 60 seeds
        split VER-24, A 20 seeds, B 20 seeds
        soak VER-24/A 2026-01-10, GA3 500 ppm, 24 h
        ${soak}
        sow VER-24/A 2026-01-12
        sow VER-24/B 2026-01-12
      `);
    }
  });

  test('has none in seed that was sown once and all of which was treated later', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 41 seeds
      split VER-24, X 40 seeds
      sow VER-24/X 2026-01-12
          ^^^^^^^^ no-control
      split VER-24/X 2026-03-12, A 20 seeds, B 20 seeds
      soak VER-24/X/A 2026-03-12, GA3 500 ppm, 24 h
      soak VER-24/X/B 2026-03-12, GA3 250 ppm, 24 h
    `);
  });

  test('has its control where some was treated only after it had been watched', () => {
    const source = (mark: string, count: string) => `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      soak VER-24/A 2026-01-10, GA3 500 ppm, 24 h
      sow VER-24/A 2026-01-11
      ${mark}
      sow VER-24/B 2026-01-11
      count VER-24/A 2026-02-08, 9
      ${count}
      soak VER-24/B 2026-02-20, GA3 500 ppm, 24 h
      count VER-24/B 2026-03-08, 9
    `;
    expectMarked(codes, source('', 'count VER-24/B 2026-02-08, 3'));
    expectMarked(codes, source('    ^^^^^^^^ no-control', ''));
  });

  test('is not missed before anything was sown', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds
      soak VER-24/A 2026-01-10, GA3 500 ppm, 24 h
    `);
  });
});
