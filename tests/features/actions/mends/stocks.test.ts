import { describe, expect, test } from 'vitest';
import { linesOf } from './mending.ts';

const stock = 'stock G1 2026-01-09, GA3 20 mg, 20 mL';

describe('a dilution that cannot be made', () => {
  test('has its volumes exchanged', () => {
    expect(linesOf('impossible-dilution', `
      ${stock}
      dilute G2 2026-01-10, from G1 20 mL, to 0.01 L
                                           ^^^^^^^^^ impossible-dilution
    `)).toEqual([['Swap the volumes: 0.01 L of G1, made up to 20 mL', 'dilute G2 2026-01-10, from G1 0.01 L, to 20 mL']]);
  });

  test('from itself is the grower’s to tell', () => {
    expect(linesOf('impossible-dilution', `
      dilute G2 2026-01-10, from G2 5 mL, to 10 mL
                                 ^^ impossible-dilution
    `)).toEqual([]);
  });
});

describe('more than is left of a stock', () => {
  test('becomes all that is left, in a dilution and in a soak', () => {
    expect(linesOf('stock-overdrawn', `
      ${stock}
      dilute G2 2026-01-10, from G1 12.5 mL, to 50 mL
      dilute G3 2026-01-11, from G1 10 mL, to 20 mL
                                    ^^^^^ stock-overdrawn
    `)).toEqual([['Take 7.5 mL: all that is left', 'dilute G3 2026-01-11, from G1 7.5 mL, to 20 mL']]);
    expect(linesOf('stock-overdrawn', `
      ${stock}
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-11 19:00, G1 25 mL, 24 h
                                       ^^^^^ stock-overdrawn
    `)).toEqual([['Take 20 mL: all that is left', 'soak VER-24 2026-01-11 19:00, G1 20 mL, 24 h']]);
  });

  test('is none where nothing is', () => {
    expect(linesOf('stock-overdrawn', `
      ${stock}
      dilute G2 2026-01-10, from G1 20 mL, to 50 mL
      dilute G3 2026-01-11, from G1 10 mL, to 20 mL
                                    ^^^^^ stock-overdrawn
    `)).toEqual([]);
  });
});
