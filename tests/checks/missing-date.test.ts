import { describe, expect, test } from 'vitest';
import { at, reportFor } from '../report/helpers.ts';
import { expectAllMarked, expectMarked, problemsIn } from './marked.ts';

describe('a record without a date', () => {
  test('is marked at its keyword where no day line of its file stands above it', () => {
    expectAllMarked(`
      --- a.germ
      day 2026-01-10
      --- b.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24, 24 seeds
      ^^^ missing-date
      day 2026-01-11
      count VER-24, 0
    `);
  });

  test('is marked once, of whatever it is: a lot, a stock, a regime, or what is not there', () => {
    expectAllMarked(`
      regime cold, chill 4 C 90 days
      note cold, worked well
      ^^^^ missing-date
      note cold 2026-01-01, the next one is a row of its own
      stock G1, GA3 20 mg, 20 mL
      ^^^^^ missing-date
      photo G1 2026-01-01, bottle.jpg
      dilute G2, from G1 10 mL, to 20 mL
      ^^^^^^ missing-date
      photo G1 2026-01-01, bottle.jpg
      photo G1, bottle.jpg
      ^^^^^ missing-date
      note G1 2026-01-01, still clear
      count GON-1, 3
      ^^^^^ missing-date
            ^^^^^ unknown-lot
    `);
  });

  test('is one mistake for all that miss the same day line, at the first of them; each lot still knows of its own', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      lot GEN-25 Gentiana lutea, 40 seeds
      sow VER-24/A, 20 seeds
      ^^^ missing-date
      sow VER-24/B, 20 seeds
      due VER-24 2026-05-01, look
      sow GEN-25, 20 seeds
      day 2026-02-01
      count VER-24/A, 0
    `;
    expectMarked(['missing-date'], source);
    const [found] = problemsIn('missing-date', source);
    expect(found!.message).toBe('This record and 2 more below have no date, and there is no “day” line above them. '
      + 'Write a date before the first comma, or a “day” line above.');
    const errors = reportFor(source, at('2026-06-01')).lots.map(({ lot, errors: n }) => [lot.id, n]);
    expect(errors).toEqual([['VER-24', 2], ['GEN-25', 1]]);
  });

  test('is no problem for a lot, a split and all that holds for the whole journal', () => {
    expectAllMarked(`
      zone Europe/Vienna
      limit soak, 24 h
      agent kelp, seaweed
      guide Veratrum, GA3 500 ppm
      regime cold, chill 4 C 90 days
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
    `);
  });

  test('is not said where the `day` line above cannot be read: that one line is the mistake', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-11
      sow VER-24, 24 seeds
      day 2026-1-19
          ^^^^^^^^^ bad-date
      count VER-24, 3
      count VER-24, 2
      day 2026-02-30
          ^^^^^^^^^^ impossible-date
      count VER-24, 1
    `);
  });

  test('is not said below a line that was meant for a `day`, and no such line lets an earlier day count', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-11
      sow VER-24, 24 seeds
      date 2026-01-19
      ^^^^ unknown-keyword
      count VER-24, 30
      day: 2026-01-20
      ^^^^ unknown-keyword
      count VER-24, 30
      2026-01-21
      ^^^^^^^^^^ unknown-line
      count VER-24, 30
      20.1.2026
      ^^^^^^^^^ unknown-line
      count VER-24, 30
    `);
  });

  test('is not said of a date that is there and cannot be read', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 19/1/2026, 24 seeds
                 ^^^^^^^^^ day-first-date
    `);
  });
});
