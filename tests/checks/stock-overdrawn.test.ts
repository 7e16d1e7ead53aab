import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['stock-overdrawn'] as const;
const message = (source: string) => problemsIn('stock-overdrawn', source).map(problem => problem.message.split('.')[0]);

describe('more taken from a stock than was made', () => {
  test('is marked where the stock runs out, by soaks, drops and dilutions, and not again after that', () => {
    expectMarked(codes, `
      --- bench.germ
      stock G1 2026-01-09, GA3 20 mg, 18 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      dilute G3 2026-01-20, from G1 1 mL, to 10 mL
      --- 2026.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, G1 5 mL, 24 h
      apply VER-24 2026-01-12, G1, 4 mL
                                   ^^^^ stock-overdrawn
      soak VER-24 2026-01-14 19:00, G2 20 mL, 24 h
    `);
  });

  test('goes by the order of dates, whatever the order of lines and files', () => {
    expectMarked(codes, `
      --- a.germ
      dilute G2 2026-03-01, from G1 10 mL, to 20 mL
                                    ^^^^^ stock-overdrawn
      dilute G3 2026-02-01, from G1 10 mL, to 20 mL
      --- b.germ
      stock G1 2026-01-09, GA3 20 mg, 18 mL
    `);
  });

  test('is exact: ten draws of a tenth empty a millilitre, and one more is too much', () => {
    const draws = (n: number) => Array.from({ length: n }, (_, i) => `dilute D${i} 2026-02-01, from G1 0.1 mL, to 1 mL\n`).join('');
    const stock = 'stock G1 2026-01-09, GA3 20 mg, 1 mL\n';
    expect(message(`${stock}${draws(10)}`)).toEqual([]);
    expect(message(`${stock}${draws(11)}`)).toHaveLength(1);
  });

  test('says what was left', () => {
    const stock = 'stock G1 2026-01-09, GA3 20 mg, 18 mL\n';
    expect(message(`${stock}dilute G2 2026-01-09, from G1 20 mL, to 40 mL`)).toEqual(['This takes 20 mL of G1, but only 18 mL were made up']);
    expect(message(`${stock}dilute G2 2026-01-09, from G1 10 mL, to 20 mL\ndilute G3 2026-01-09, from G1 9 mL, to 20 mL`))
      .toEqual(['This takes 9 mL of G1, but only 8 mL of the 18 mL made up are left']);
    expect(message(`${stock}dilute G2 2026-01-09, from G1 18 mL, to 20 mL\ndilute G3 2026-01-09, from G1 9 mL, to 20 mL`))
      .toEqual(['This takes 9 mL of G1, but nothing of the 18 mL made up is left']);
  });

  test('is not claimed where a volume is not written', () => {
    expectMarked(codes, `
      stock G1 2026-01-09, GA3 20 mg, 18 mL
      stock G2 2026-01-09, GA3 20 mg
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, G1, 24 h
      soak VER-24 2026-01-12 19:00, G1, KNO3 0.2 %, 50 mL, 24 h
      soak VER-24 2026-01-14 19:00, G1 18 mL, 24 h
      soak VER-24 2026-01-16 19:00, G2 500 mL, 24 h
    `);
  });
});
