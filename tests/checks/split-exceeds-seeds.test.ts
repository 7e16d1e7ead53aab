import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('more seeds given out than there are', () => {
  test('are marked at the parts, one above what is there', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 48 seeds
      split VER-24, A 24 seeds, B 24 seeds
      lot VER-25 Veratrum nigrum, 47 seeds
      split VER-25, A 24 seeds, B 24 seeds
                    ^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
    `);
  });

  test('are marked at the record that comes later in time, whatever the order of lines', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24 2026-02-01, C 24 seeds
                               ^^^^^^^^^^ split-exceeds-seeds
      split VER-24 2026-01-01, A 24 seeds, B 24 seeds
    `);
  });

  test('may be those of a batch', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      split VER-24/A, 1 12 seeds, 2 13 seeds
                      ^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
      split VER-24/A/1, x 12 seeds
    `);
  });

  test('are those that are left: what germinated or rotted before is not given out', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-10, 60 seeds
      count VER-24 2026-01-20, 20, 4 rotted, 1 lost
      split VER-24 2026-01-21, A 20 seeds, B 15 seeds
      lot VER-25 Veratrum nigrum, 60 seeds
      sow VER-25 2026-01-10, 60 seeds
      count VER-25 2026-01-20, 20, 4 rotted, 1 lost
      split VER-25 2026-01-21, A 20 seeds, B 16 seeds
                               ^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
    `, { now: '2026-01-21' });
  });

  test('are not counted where the number of seeds is unknown, nor twice where a name is', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum
      split VER-24, A 2400 seeds
      lot VER-25 Veratrum nigrum, 30 seeds
      split VER-25, A 20 seeds
      split VER-25, A 20 seeds
            ^^^^^^ duplicate-definition
    `);
  });

  test('are named with what is left', () => {
    expect(problemsIn('split-exceeds-seeds', 'lot V Veratrum, 20 seeds\nsplit V, A 12 seeds, B 12 seeds')[0]?.message)
      .toBe('This splits off 24 seeds of V, but only 20 of 20 are left. Give out fewer, or correct the number of seeds.');
  });
});
