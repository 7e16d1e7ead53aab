import { describe, test } from 'vitest';
import { expectAllMarked } from './marked.ts';

describe('a count of a day that has not come', () => {
  test('is marked at its date, or at the batch where a day line says the date; one of today is not', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-20 23:59, 1
      count VER-24 2026-03-21, 1
                   ^^^^^^^^^^ count-in-future
      day 2062-03-22
      count VER-24, 1
            ^^^^^^ count-in-future
      sow VER-24/A
          ^^^^^^^^ unknown-batch
      lot GEN-24 Gentiana lutea, 60 seeds
      sow GEN-24 2026-03-01
      cut GEN-24 2026-06-21, 60 dead
                 ^^^^^^^^^^ count-in-future
    `, { now: '2026-03-20 08:00' });
  });
});
