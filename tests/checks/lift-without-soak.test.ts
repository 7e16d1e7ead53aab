import { describe, test } from 'vitest';
import { expectAllMarked } from './marked.ts';

const now = '2026-03-01';

describe('a lift of seed that is in no soak', () => {
  test('is marked where it was never soaked, was lifted before, or went on to something else', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds, C 20 seeds
      lift VER-24/A 2026-01-10 19:00
           ^^^^^^^^ lift-without-soak
      soak VER-24/B 2026-01-10 19:00, water
      lift VER-24/B 2026-01-11 18:00
      lift VER-24/B 2026-01-11 19:00
           ^^^^^^^^ lift-without-soak
      soak VER-24/C 2026-01-10 19:00, water, 24 h
      sow VER-24/C 2026-01-11 19:30
      lift VER-24/C 2026-01-12 19:00
           ^^^^^^^^ lift-without-soak
    `, { now });
  });

  test('is marked where the time is that of the morning before', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 12 h
      lift VER-24 2026-01-10 07:00
           ^^^^^^ lift-without-soak
    `, { now });
  });

  test('is right for each of several soaks, of one day without times too', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-10
      soak VER-24, bleach 1 %, 10 min
      lift VER-24
      soak VER-24, water
      lift VER-24
    `, { now });
  });

  test('is right for batches that were split off in the soak, each for itself', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 40 seeds
      soak VER-24 2026-01-10 19:00, water
      split VER-24 2026-01-11 07:00, A 20 seeds, B 20 seeds
      lift VER-24/A 2026-01-11 07:00
      lift VER-24/B 2026-01-11 19:00
      lift VER-24/B 2026-01-12 19:00
           ^^^^^^^^ lift-without-soak
    `, { now });
  });

  test('is not said while the soak cannot be read', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 10/1/2026 19:00, water
                  ^^^^^^^^^ day-first-date
      lift VER-24 2026-01-11 18:00
    `, { now });
  });
});
