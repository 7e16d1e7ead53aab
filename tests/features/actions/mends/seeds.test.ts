import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('more seeds sown than there are', () => {
  test('are as many as there are, or the lot has more; which, nobody knows', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-11, 24 seeds, 18 C
                             ^^^^^^^^ sown-exceeds-seeds
    `;
    expect(linesOf('sown-exceeds-seeds', source)).toEqual([
      ['Sow 20: all that are left', 'sow VER-24 2026-01-11, 20 seeds, 18 C'],
      ['Change the lot to 24 seeds', 'lot VER-24 Veratrum nigrum, 24 seeds'],
    ]);
    expect(mended('sown-exceeds-seeds', source).map(({ preferred }) => preferred)).toEqual([false, false]);
  });

  test('of a batch are what it was given; of a second sowing what the first left', () => {
    expect(linesOf('sown-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds
      sow VER-24/A 2026-01-11, 24 seeds
                               ^^^^^^^^ sown-exceeds-seeds
    `)).toEqual([['Sow 20: all that are left', 'sow VER-24/A 2026-01-11, 20 seeds']]);
    expect(linesOf('sown-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-11, 50 seeds
      sow VER-24 2026-01-18, 15 seeds
                             ^^^^^^^^ sown-exceeds-seeds
    `)).toEqual([
      ['Sow 10: all that are left', 'sow VER-24 2026-01-18, 10 seeds'],
      ['Change the lot to 65 seeds', 'lot VER-24 Veratrum nigrum, 65 seeds'],
    ]);
  });

  test('none of which are there leave the number of the lot', () => {
    expect(linesOf('sown-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-11, 60 seeds
      sow VER-24 2026-01-11, 60 seeds
                             ^^^^^^^^ sown-exceeds-seeds
    `)).toEqual([['Change the lot to 120 seeds', 'lot VER-24 Veratrum nigrum, 120 seeds']]);
  });
});

describe('a split that gives out too much', () => {
  test('gives each of equal parts less, the last what the others leave, or is of more', () => {
    expect(linesOf('split-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 41 seeds
      split VER-24, A 24 seeds, B 24
                    ^^^^^^^^^^^^^^^^ split-exceeds-seeds
    `)).toEqual([
      ['Give each 20 and keep 1: the 41 that are left', 'split VER-24, A 20 seeds, B 20'],
      ['Give B 17: what the others leave over', 'split VER-24, A 24 seeds, B 17'],
      ['Change the lot to 48 seeds', 'lot VER-24 Veratrum nigrum, 48 seeds'],
    ]);
  });

  test('of parts that were not to be equal gives the last one less, if that is possible', () => {
    expect(linesOf('split-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 40 seeds
      split VER-24/A, 1 10 seeds, 2 20 seeds, 3 20 seeds
                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
    `)).toEqual([['Give 3 10: what the others leave over', 'split VER-24/A, 1 10 seeds, 2 20 seeds, 3 10 seeds']]);
    expect(linesOf('split-exceeds-seeds', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 40 seeds
      split VER-24/A, 1 45 seeds, 2 4 seeds
                      ^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
    `)).toEqual([]);
  });
});

describe('a cut test that does not add up', () => {
  test('of one class sorted all of the seed into it', () => {
    const fixes = mended('cut-does-not-add-up', `
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-11
      count VER-24 2026-01-30, 3, 1 rotted
      cut VER-24 2026-02-20, 17 dead
                             ^^^^^^^ cut-does-not-add-up
    `);
    expect(fixes).toEqual([{
      title: 'Change to 16 dead: all that had not germinated', lines: ['cut VER-24 2026-02-20, 16 dead'], preferred: true, left: [],
    }]);
  });

  test('of several classes may be wrong in any of them', () => {
    expect(linesOf('cut-does-not-add-up', `
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-11
      cut VER-24 2026-02-20, 17 dead, 1 fresh
                             ^^^^^^^^^^^^^^^^ cut-does-not-add-up
    `)).toEqual([]);
  });
});
