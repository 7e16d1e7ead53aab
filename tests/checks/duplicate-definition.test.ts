import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('a thing that is defined twice', () => {
  test('is marked at the later one, in the order of files and lines', () => {
    expectAllMarked(`
      --- b.germ
      lot VER-24 Veratrum album, 30 seeds
          ^^^^^^ duplicate-definition
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      dilute G1 2026-01-09, from G2 10 mL, to 20 mL
             ^^ duplicate-definition
      stock G2 2026-01-09, GA3 20 mg, 20 mL
      regime VER-24, warm 20 C
             ^^^^^^ duplicate-definition
      agent kelp, seaweed
      agent kelp, more seaweed
            ^^^^ duplicate-definition
    `, { now: '2026-01-20' });
  });

  test('may be a batch, given out by another record; within one record its line says it', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 12 seeds, B 12 seeds
      split VER-24 2026-01-10, A 12 seeds
            ^^^^^^ duplicate-definition
      split VER-24/A, 1 4 seeds, 1 4 seeds
                                 ^^^^^^^^^ repeated-fact
    `, { now: '2026-01-20' });
  });

  test('may be a stock with the name of an agent', () => {
    expectAllMarked(`
      stock GA3 2026-01-09, GA3 20 mg, 20 mL
            ^^^ duplicate-definition
    `, { now: '2026-01-20' });
  });

  test('is no problem for batches of two lots, for an agent that needs no declaration, and for the same zone again', () => {
    expectAllMarked(`
      --- a.germ
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 12 seeds
      lot VER-25 Veratrum nigrum, 60 seeds
      split VER-25, A 12 seeds
      agent GA3, solubility 5 g/L
      --- b.germ
      zone Europe/Vienna
    `);
  });

  test('may be a second zone that is another one', () => {
    expectAllMarked(`
      zone Europe/Vienna
      zone Europe/Paris
           ^^^^^^^^^^^^ duplicate-definition
    `);
  });

  test('is said to be in which file the first one is, without a number that would grow old', () => {
    const message = (source: string) => problemsIn('duplicate-definition', source).map(problem => problem.message.split('. ')[0]);
    expect(message('--- in/a.germ\nlot V Veratrum\n--- in/b.germ\nlot V Veratrum')).toEqual(['Lot “V” is already defined in a.germ']);
    expect(message('stock V 2026-01-09, GA3 1 mg, 1 mL\nlot V Veratrum')).toEqual(['Lot “V” is already defined further up in this file']);
    expect(message('zone Europe/Vienna\nzone UTC')).toEqual(['A zone other than “UTC” is already defined further up in this file']);
    expect(message('stock BA 2026-01-09, GA3 1 mg, 1 mL')).toEqual(['Agent “BA” is already defined by Plumule itself']);
  });
});
