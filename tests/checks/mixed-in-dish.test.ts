/** What is poured together in a soak or in drops. Every value is worked out by hand beside it. */
import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['total-below-parts', 'volume-missing', 'strengths-disagree', 'dose-above-limit', 'stock-overdrawn', 'beyond-guides'] as const;

/** 1000 ppm and 500 ppm of GA3, 2000 ppm of nitrate. */
const bottles = `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      stock KN 2026-01-09, KNO3 1 g, 500 mL`;

describe('what is mixed in the dish', () => {
  test('cannot be more than the total that is written, whatever the units', () => {
    expectMarked(codes, `${bottles}
      soak VER-24 2026-01-10, G2 5 mL, water 5000 uL, 9.9 mL, 24 h
                                                      ^^^^^^ total-below-parts
      soak VER-24 2026-01-12, G2 5 mL, water 0.005 L, 10 mL, 24 h
      soak VER-24 2026-01-14, KN 5 mL, 3 mL, 24 h
                                       ^^^^ total-below-parts
      soak VER-24 2026-01-16, KN 5 mL, GA3 500 ppm, 20 mL, 24 h
    `);
    const [problem] = problemsIn('total-below-parts', `${bottles}\n      soak VER-24 2026-01-10, G2 5 mL, water 10 mL, 12 mL`);
    expect(problem?.message).toBe('5 mL of G2 and 10 mL of water are 15 mL together, more than the 12 mL written as the total. '
      + 'Correct a volume: one without a name is all of the liquid, water included.');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['15 mL']);
  });

  test('asks how much of a stock went in, where something else did too', () => {
    expectMarked(codes, `${bottles}
      soak VER-24 2026-01-10, G2, 20 mL, 24 h
                              ^^ volume-missing
      soak VER-24 2026-01-11, G2, KN 5 mL, 20 mL, 24 h
                              ^^ volume-missing
      soak VER-24 2026-01-12, G2, KN, 24 h
                              ^^ volume-missing
                                  ^^ volume-missing
      soak VER-24 2026-01-13, G2 5 mL, water, 24 h
                                       ^^^^^ volume-missing
      soak VER-24 2026-01-14, G2, water, 24 h
                              ^^ volume-missing
      soak VER-24 2026-01-15, G2, 24 h
      soak VER-24 2026-01-16, G2, KNO3 0.2 %, 24 h
      soak VER-24 2026-01-17, G2 5 mL, water, 20 mL, 24 h
      soak VER-24 2026-01-18, water, 20 mL, 24 h
      soak VER-24 2026-01-19, GA3 500 ppm, water, 20 mL, 24 h
    `);
    const fixes = (soak: string) => problemsIn('volume-missing', `${bottles}\n      ${soak}`).flatMap(each => each.fixes.map(({ text }) => text));
    expect(fixes('soak VER-24 2026-01-10, G2, 20 mL')).toEqual(['G2 20 mL']);
    // 20 less 5.
    expect(fixes('soak VER-24 2026-01-10, G2, KN 5 mL, 20 mL')).toEqual(['G2 15 mL']);
    expect(fixes('soak VER-24 2026-01-10, G2, KN, 20 mL')).toEqual([]);
    expect(fixes('soak VER-24 2026-01-10, G2, KN 20 mL, 20 mL')).toEqual([]);
  });

  test('has one strength of each agent', () => {
    expectMarked(codes, `${bottles}
      soak VER-24 2026-01-10, GA3 500 ppm, G2 5 mL, 20 mL, 24 h
                                  ^^^^^^^ strengths-disagree
      soak VER-24 2026-01-12, GA3 125 ppm, G2 5 mL, 20 mL, 24 h
    `);
  });

  test('holds what a weighed powder adds to a stock, or to another powder', () => {
    // 10 mg in 10 mL and 1000 ppm; 15 mg and 15 mg in 20 mL.
    expectMarked([...codes, 'strength-missing'], `${bottles}
      powder P1 2026-01-01, GA3 100 mg
      powder P2 2026-01-01, GA3 100 mg
      soak VER-24 2026-01-10, P1 10 mg, G1 10 mL, 24 h
                              ^^ dose-above-limit
      soak VER-24 2026-01-12, P1 15 mg, P2 15 mg, 20 mL, 24 h
                              ^^ dose-above-limit
      soak VER-24 2026-01-14, P1 5 mg, P2 5 mg, 20 mL, 24 h
      soak VER-24 2026-01-16, P1 500 ppm, P2 500 ppm, 20 mL, 24 h
                                 ^^^^^^^ strengths-disagree
    `);
    const [problem] = problemsIn('dose-above-limit', `${bottles}
      powder P1 2026-01-01, GA3 100 mg
      soak VER-24 2026-01-10, P1 10 mg, G1 10 mL, 24 h`);
    expect(problem?.message).toMatch(/^GA3 2000 ppm \(stocks P1 and G1\) is above the limit of 1000 ppm/);
  });

  test('is held against limits and guides as it is in the dish', () => {
    // 1000 ppm in G1: half of the dish is 500, a quarter and 500 ppm in half of it (G2) are 500 too.
    expectMarked(codes, `${bottles}
      limit GA3, 450 ppm
      guide Veratrum, KNO3 0.1 %, source "a book"
      soak VER-24 2026-01-10, G1 5 mL, water 5 mL, 24 h
                              ^^ dose-above-limit
      soak VER-24 2026-01-11, G1 4 mL, 10 mL, 24 h
      soak VER-24 2026-01-12, G1 1 mL, G2 2 mL, 4 mL, 24 h
                              ^^ dose-above-limit
      soak VER-24 2026-01-13, KN 10 mL, 20 mL, 24 h
      soak VER-24 2026-01-14, KN 11 mL, 20 mL, 24 h
                              ^^ beyond-guides
    `);
  });

  test('counts a salt with its acid', () => {
    // 600 ppm of the salt stand for 540.6 ppm of the acid; with 500 ppm of it that is 1040.6 ppm.
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10, GA3 500 ppm, GA3K 600 ppm, 24 h
                                                ^^^^^^^ dose-above-limit
      soak VER-24 2026-01-12, GA3 450 ppm, GA3K 600 ppm, 24 h
    `);
    expect(problemsIn('dose-above-limit', 'lot V Veratrum\nsoak V 2026-01-10, GA3 500 ppm, GA3K 600 ppm')[0]?.message)
      .toMatch(/^GA3K 600 ppm with 500 ppm of GA3 beside it is above the limit of 1000 ppm of GA3 /);
  });

  test('is drawn from each stock as it is written there; the total draws on none', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      soak VER-24 2026-01-10, G1 12 mL, 100 mL, 24 h
      soak VER-24 2026-01-11, G1 8 mL, water 50 mL, 24 h
      soak VER-24 2026-01-12, G1 1 mL, 10 mL, 24 h
                                 ^^^^ stock-overdrawn
    `);
  });

  test('holds for drops, where a volume is what was used of the only stock', () => {
    expectMarked(codes, `${bottles}
      limit GA3, 450 ppm
      apply VER-24 2026-03-10, G2, 4 mL, 3 seedlings
                               ^^ dose-above-limit
      apply VER-24 2026-03-11, G2 2 mL, water 2 mL, 3 seedlings
      apply VER-24 2026-03-12, G2 2 mL, 1 mL, 3 seedlings
                                        ^^^^ total-below-parts
    `);
  });
});
