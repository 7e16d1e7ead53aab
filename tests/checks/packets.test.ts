/** Packets of powder: what is taken from them, and what cannot be. */
import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = [
  'unknown-packet', 'unknown-stock', 'unknown-agent', 'stock-overdrawn', 'draw-before-made', 'stock-expired',
  'powder-by-volume', 'taken-after-empty', 'strength-missing', 'strength-of-stock', 'missing-fact', 'repeated-fact',
  'volume-missing', 'bad-unit', 'bad-value', 'stray-text', 'duplicate-definition', 'impossible-dilution', 'above-solubility',
] as const;

describe('a packet of powder', () => {
  test('gives stocks, doses and pinches without a problem', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      powder P1 2025-11-02, GA3 1 g, purity 90 %, bought 2025-10, keeps 3 years, at freezer
      stock G1 2026-01-09, from P1 20 mg, 18 mL
      stock G2 2026-01-10, from P1 halved 2 times, 1 L
      stock G3 2026-01-11, from P1, 20 mL
      soak VER-24 2026-01-12 19:00, P1 10 mg, 20 mL, 24 h
      soak VER-24 2026-01-14 19:00, P1 500 ppm, 20 mL, 24 h
      soak VER-24 2026-01-16 19:00, P1 unmeasured, 24 h
      soak VER-24 2026-01-18 19:00, P1 10 mg, KNO3 0.2 %, water 20 mL, 24 h
      note P1 2026-02-01, moved to the other freezer
    `);
  });

  test('has to be defined, as a packet, and a solution is no packet', () => {
    expectMarked(codes, `
      powder P1 2025-11-02, GA3 1 g
      stock G1 2026-01-09, from P2 20 mg, 18 mL
                                ^^ unknown-packet
      stock G2 2026-01-09, from G1 20 mg, 18 mL
                                ^^ unknown-packet
      dilute G3 2026-01-09, from P1 5 mL, to 10 mL
                                 ^^ unknown-stock
      powder GA3 2025-11-02, GA3 1 g
             ^^^ duplicate-definition
    `);
    const said = problemsIn('unknown-packet', 'stock G1 2026-01-02, GA3 20 mg, 20 mL\nstock G2 2026-01-09, from G1 5 mg, 18 mL');
    expect(said.map(({ message }) => message)).toEqual([
      'No packet of powder “G1” is defined in this journal. G1 is a solution: for a weaker one, write “dilute”.',
    ]);
  });

  test('is not emptied in silence, by weighing, by a dose or by what a strength takes', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      powder P1 2025-11-02, GA3 50 mg
      stock G1 2026-01-09, from P1 30 mg, 30 mL
      stock G2 2026-01-10, from P1 30 mg, 30 mL
                                   ^^^^^ stock-overdrawn
      powder P2 2025-11-02, GA3 10 mg, purity 50 %
      soak VER-24 2026-01-12 19:00, P2 500 ppm, 20 mL, 24 h
                                       ^^^^^^^ stock-overdrawn
      powder P3 2025-11-02, GA3 100 mg
      stock G4 2026-01-09, from P3 halved 1 time, 500 mL
      soak VER-24 2026-01-13 19:00, P3 58 mg, 200 mL, 24 h
                                       ^^^^^ stock-overdrawn
      soak VER-24 2026-01-15 19:00, P3 1 mg, 200 mL, 24 h
    `);
    const source = 'powder P1 2025-11-02, GA3 50 mg\nstock G1 2026-01-09, from P1 30 mg, 30 mL\nstock G2 2026-01-10, from P1 30 mg, 30 mL';
    expect(problemsIn('stock-overdrawn', source).map(({ message }) => message)).toEqual([
      'This takes 30 mg of P1, but only 20 mg of the 50 mg in the packet are left. Correct an amount, or the name of what you took it from.',
    ]);
  });

  test('is asked about where a pinch has no mass, a mass no liquid, or powder a volume', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      powder P1 2025-11-02, GA3 1 g
      soak VER-24 2026-01-12 19:00, P1, 24 h
                                    ^^ strength-missing
      soak VER-24 2026-01-14 19:00, P1 10 mg, 24 h
                                    ^^ strength-missing
      soak VER-24 2026-01-16 19:00, P1 10 mL, 24 h
                                       ^^^^^ powder-by-volume
    `);
  });

  test('is asked for a mass, and not for the liquid that is there, where a part of it was halved by eye', () => {
    const [problem] = problemsIn('strength-missing', 'lot VER-24 Veratrum nigrum\npowder P1 2025-11-02, GA3 1 g\n'
      + 'soak VER-24 2026-01-12 19:00, P1 20 mg halved 2 times, 20 mL, 24 h');
    expect(problem?.message).toContain('Write the mass that you took and how much liquid it went into (“P1 10 mg, 20 mL”), or “P1 unmeasured”.');
  });

  test('keeps to its dates', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      powder P1 2026-01-09, GA3 1 g
      stock G1 2026-01-08, from P1 20 mg, 20 mL
                                ^^ draw-before-made
      powder P4 2026-01-09, GA3 1 g, bought 2021-06
      stock G5 2026-01-10, from P4 20 mg, 20 mL
                                ^^ stock-expired
      powder P2 2020-01-09, GA3 1 g, keeps 2 years
      stock G2 2022-01-10, from P2 20 mg, 20 mL
                                ^^ stock-expired
      powder P3 2020-01-09, GA3 1 g
      note P3 2021-01-09, got damp, thrown away
      stock G3 2021-01-09, from P3 20 mg, 20 mL
      stock G4 2021-01-10, from P3 20 mg, 20 mL
                                ^^ taken-after-empty
      stock K1 2021-01-10, KNO3 2 g, 1 L
      note K1 2021-01-12, not emptied yet
      soak VER-24 2021-01-13 19:00, K1 20 mL, 24 h
    `);
  });

  test('takes a mass on its line, and no other powder stands beside it', () => {
    expectMarked(codes, `
      powder P1 2026-01-09, purity 90 %
      ^^^^^^ missing-fact
      powder P2 2026-01-09, GA3 400 mg halved 2 times
                                       ^^^^^^^^^^^^^^ stray-text
      stock G1 2026-01-10, 20 mL
      ^^^^^ missing-fact
      powder P3 2026-01-09, GA3 1 g
      stock G2 2026-01-10, from P3 10 mL, 20 mL
                                      ^^ bad-unit
      stock G3 2026-01-10, from 20 mg, 20 mL
                                ^^^^^ bad-value
      stock G4 2026-01-10, GA3 20 mg, from P3 20 mg, 20 mL
                           ^^^^^^^^^ repeated-fact
    `);
  });
});
