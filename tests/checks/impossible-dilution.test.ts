import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['impossible-dilution'] as const;

describe('a dilution that nobody can make', () => {
  test('is one to less than was taken, whether or not the strength is known', () => {
    expectMarked(codes, `
      stock G1 2026-01-09, GA3 20 mg, 18 mL
      dilute G2 2026-01-09, from G1 10 mL, to 5 mL
                                           ^^^^^^^ impossible-dilution
      dilute G3 2026-01-09, from G9 10 mL, to 5 mL
                                           ^^^^^^^ impossible-dilution
      dilute G4 2026-01-09, from G1 5 mL, to 5 mL
      dilute G5 2026-01-09, from G1 500 uL, to 0.5 mL
    `);
  });

  test('is each that is made from itself, alone or in a circle, in one file or in two', () => {
    expectMarked(codes, `
      --- a.germ
      dilute G1 2026-01-09, from G1 10 mL, to 20 mL
                                 ^^ impossible-dilution
      dilute G2 2026-01-09, from G4 10 mL, to 20 mL
                                 ^^ impossible-dilution
      dilute G3 2026-01-09, from G2 10 mL, to 20 mL
                                 ^^ impossible-dilution
      --- b.germ
      dilute G4 2026-01-09, from G3 10 mL, to 20 mL
                                 ^^ impossible-dilution
      dilute G5 2026-01-09, from G4 10 mL, to 20 mL
    `);
  });

  test('is the first that follows on more others than can be worked out exactly', () => {
    // 1000 ppm halved so often has a denominator of 2 to that power: more than a thousand digits at 3323 halvings.
    const halvings = (n: number) => Array.from({ length: n }, (_, i) =>
      `dilute D${i + 1} 2026-01-09, from D${i} 10 mL, to 20 mL\n`).join('');
    const journal = (n: number) => `stock D0 2026-01-09, GA3 10 mg, 10 mL\n${halvings(n)}`;
    expect(problemsIn('impossible-dilution', journal(100))).toEqual([]);
    const found = problemsIn('impossible-dilution', journal(6000));
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain('Too many dilutions follow one another');
  });
});
