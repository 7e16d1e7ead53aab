import { describe, test } from 'vitest';
import { expectAllMarked } from './marked.ts';

const now = '2026-03-20';

describe('a total that falls', () => {
  test('is marked; one that stays is not', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 4, 1 rotted
      count VER-24 2026-03-09, =4 germinated, =1 rotted
      count VER-24 2026-03-10, =3 germinated, =0 rotted, 1
                               ^^^^^^^^^^^^^ total-falls
                                              ^^^^^^^^^ total-falls
                                                         ^ repeated-fact
      count VER-24 2026-03-11, =9 germinated
    `, { now });
  });

  test('is measured by what later stages implied', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 4 leaf
      count VER-24 2026-03-09, =3 emerged
                               ^^^^^^^^^^ total-falls
    `, { now });
  });

  test('is none where records are out of order', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      count VER-24 2026-03-10, =6 germinated
      count VER-24 2026-03-08, =4 germinated
      sow VER-24 2026-03-01
    `, { now });
  });
});
