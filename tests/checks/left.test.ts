/** What is left of a bottle or a packet, weighed or measured again: what cannot be. */
import { expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

test('is of a bottle or a packet that is there, in its own unit', () => {
  expectAllMarked(`
    powder P1 2026-01-02, GA3 1 g, purity 90 %
    stock G1 2026-01-02, from P1 20 mg, 20 mL
    dilute G2 2026-01-02, from G1 10 mL, to 20 mL
    lot VER-24 Veratrum nigrum
    note VER-24 2026-01-02, hard
    day 2026-02-01
    left P1, 960 mg
    left G1 19:00, 9 mL
    left G2, 15 mL
    left P1, 9 mL
             ^^^^ left-in-wrong-unit
    left G2, 9 mg
             ^^^^ left-in-wrong-unit
    left P2, 9 mg
         ^^ unknown-stock
    left VER-24, 9 mL
         ^^^^^^ unknown-stock
    left G1
    ^^^^ missing-fact
    left G2, -1 mL
             ^^^^^ bad-number
  `);
});

test('is no more than there can be, but for what balances and labels differ by', () => {
  expectAllMarked(`
    powder P1 2026-01-02, GA3 1 g
    left P1 2026-01-10, 1040 mg
    stock G1 2026-01-12, from P1 100 mg, 100 mL
    left P1 2026-01-14, 1 g
                        ^^^ more-left-than-possible
    stock G2 2026-01-12, from P1 halved 1 time, 100 mL
    left G2 2026-01-14, 104 mL
    left G2 2026-01-15, 2 mL
    left G2 2026-01-16, 8 mL
                        ^^^^ more-left-than-possible
    stock G3 2026-01-12, GA3 20 mg
                         ^^^ strength-missing
    left G3 2026-01-15, 300 mL
  `);
  const [first, second] = problemsIn('more-left-than-possible', `
    powder P1 2026-01-02, GA3 400 mg
    stock G1 2026-01-12, from P1 100 mg, 100 mL
    left P1 2026-01-14, 0.35 g
    left P1 2026-01-15, 0 mg
    left P1 2026-01-16, 100 mg
  `);
  expect(first!.message).toBe('350 mg cannot be left of P1: at most 300 mg were there. '
    + 'Correct a number, or the record of what was made or taken.');
  expect(second!.message).toContain('100 mg cannot be left of P1: nothing was left by then.');
});

test('is taken from as it was found', () => {
  expectAllMarked(`
    stock G1 2026-01-02, GA3 20 mg, 100 mL
    left G1 2026-01-10, 12 mL
    dilute G2 2026-01-12, from G1 20 mL, to 40 mL
                                  ^^^^^ stock-overdrawn
    stock G3 2026-01-02, GA3 20 mg
                         ^^^ strength-missing
    left G3 2026-01-10, 12 mL
    dilute G4 2026-01-12, from G3 20 mL, to 40 mL
                                  ^^^^^ stock-overdrawn
  `);
  const said = problemsIn('stock-overdrawn', `
    stock G1 2026-01-02, GA3 20 mg, 100 mL
    left G1 2026-01-10, 12 mL
    dilute G2 2026-01-12, from G1 20 mL, to 40 mL
    stock G3 2026-01-02, GA3 20 mg
    left G3 2026-01-10, 12 mL
    dilute G4 2026-01-12, from G3 20 mL, to 40 mL
  `);
  expect(said.map(({ message }) => message.split('. ')[0])).toEqual([
    'This takes 20 mL of G1, but only 12 mL of the 100 mL made up are left', 'This takes 20 mL of G3, but only 12 mL are left',
  ]);
});

test('is not measured before it was made, nor once a note says that it is gone', () => {
  expectAllMarked(`
    powder P1 2026-01-02, GA3 1 g
    left P1 2026-01-01, 900 mg
         ^^ draw-before-made
    note P1 2026-03-01, got damp, thrown away
    left P1 2026-04-01, 700 mg
         ^^ taken-after-empty
    left P1 2026-05-01, 0 mg
  `);
  const [early] = problemsIn('draw-before-made', 'powder P1 2026-01-02, GA3 1 g\nleft P1 2026-01-01, 900 mg');
  expect(early!.message).toContain('This measures P1 on 2026-01-01, but the packet is dated on 2026-01-02.');
});
