import { describe, expect, it } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['split-too-small'] as const;

const messages = (source: string) => problemsIn('split-too-small', source).map(({ message }) => message);

describe('a split of too few seeds to tell anything', () => {
  it('is marked once one part is treated and another is not', () => {
    expectMarked(codes, `
      lot ACO-25 Aconitum lycoctonum, 20 seeds
      split ACO-25 2025-12-05, A 5 seeds, B 5 seeds
                               ^^^^^^^^^^^^^^^^^^^^ split-too-small
      soak ACO-25/A 2025-12-06 18:00, GA3 500 ppm, 24 h
      soak ACO-25/B 2025-12-06 18:00, water, 24 h
    `);
  });

  it('is marked without a date of its own too', () => {
    expectMarked(codes, `
      lot ACO-25 Aconitum lycoctonum, 20 seeds
      split ACO-25, A 5 seeds, B 5 seeds
                    ^^^^^^^^^^^^^^^^^^^^ split-too-small
      soak ACO-25/A 2025-12-06 18:00, GA3 500 ppm, 24 h
    `);
  });

  it('says what other division of the same seeds would do', () => {
    const split = (a: number, b: number) => messages(
      `lot L Iris alba, 60 seeds\nsplit L, A ${a} seeds, B ${b} seeds\nsoak L/A 2025-12-06 18:00, GA3 500 ppm, 24 h`);
    expect(split(18, 2)).toEqual([
      'With 18 treated and 2 untreated seeds, no verdict is likely even if 10 % germinate untreated and 90 % treated. '
      + 'Divided into 9 treated and 11 untreated, the same seeds would show that much.',
    ]);
    expect(split(3, 3)[0]).toMatch(/No division of so few seeds shows it: sow more, or expect no proof\.$/);
    expect(split(6, 6)).toEqual([]);
  });

  it.each([
    ['as long as nothing is treated', ''],
    ['where all are treated', 'soak L/A 2025-12-06 18:00, GA3 500 ppm, 24 h\nsoak L/B 2025-12-06 18:00, GA3 500 ppm, 24 h'],
    ['where more untreated seed of the lot is sown beside it',
      'soak L/A 2025-12-06 18:00, GA3 500 ppm, 24 h\nsow L/A 2025-12-07\nsow L/B 2025-12-07\nsow L 2025-12-07'],
    ['where it is part of a larger trial', 'split L, C 20 seeds, D 20 seeds\nsoak L/A 2025-12-06 18:00, GA3 500 ppm, 24 h\n'
      + 'soak L/C 2025-12-06 18:00, GA3 500 ppm, 24 h'],
  ])('is not marked %s', (_, records) => {
    expect(messages(`lot L Iris alba, 60 seeds\nsplit L, A 5 seeds, B 5 seeds\n${records}`)).toEqual([]);
  });

  it('is not marked where it was large enough, and only a later one left too few to treat', () => {
    expectMarked(codes, `
      lot ACO-25 Aconitum lycoctonum, 48 seeds
      split ACO-25 2025-12-05, A 24 seeds, B 24 seeds
      split ACO-25/A 2025-12-06, x 1 seed, y 23 seeds
                                 ^^^^^^^^^^^^^^^^^^^^ split-too-small
      soak ACO-25/A/x 2025-12-06 18:00, GA3 500 ppm, 24 h
    `);
  });

  it('is not marked where the number of seeds is not known', () => {
    expect(messages('lot L Iris alba\nsplit L, A 5 seeds\nsoak L/A 2025-12-06 18:00, GA3 500 ppm, 24 h\nsow L 2025-12-07')).toEqual([]);
  });
});
