import { describe, test } from 'vitest';
import { expectAllMarked } from './marked.ts';

const now = '2026-03-01';

describe('a soak that ends before it begins', () => {
  test('is marked at its end, by day and by time', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, until 2026-01-09 19:00
                                           ^^^^^^^^^^^^^^^^^^^^^^ end-before-start
      lot VER-25 Veratrum nigrum, 60 seeds
      soak VER-25 2026-01-10 19:00, water, until 2026-01-10 18:59
                                           ^^^^^^^^^^^^^^^^^^^^^^ end-before-start
      lot VER-26 Veratrum nigrum, 60 seeds
      soak VER-26 2026-01-10 19:00, water, until 2026-01-10 19:00
    `, { now });
  });

  test('is none where a time that is not written leaves it open', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, until 2026-01-10
      lot VER-25 Veratrum nigrum, 60 seeds
      soak VER-25 2026-01-10, water, until 2026-01-10 08:00
    `, { now });
  });
});
