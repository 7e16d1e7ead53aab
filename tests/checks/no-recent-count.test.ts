import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['no-recent-count'] as const;

describe('an open batch that nobody counts', () => {
  test('is marked at the last look, after more than eight weeks (common practice, no source)', () => {
    // 56 days after 2026-01-10 is 2026-03-07.
    const source = (mark: string) => `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-03
      count VER-24 2026-01-10, 0
      ${mark}
    `;
    expectMarked(codes, source('# nothing'), { now: '2026-03-07' });
    expectMarked(codes, source('      ^^^^^^ no-recent-count'), { now: '2026-03-08' });
    expect(problemsIn('no-recent-count', source('# nothing'), { now: '2026-03-08' })[0]?.message).toMatch(/^VER-24 has not been counted for 57 days\./);
  });

  test('goes by the limit that the journal sets', () => {
    expectMarked(codes, `
      limit count, 3 days
      limit count, 30 days, for Paris
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-03
          ^^^^^^ no-recent-count
      lot PAR-24 Paris polyphylla, 60 seeds
      sow PAR-24 2026-01-03
    `, { now: '2026-03-08' });
  });

  test('is seed in a damp towel too, though nobody wrote that it was sown', () => {
    expectMarked(codes, `
      lot VER-20 Veratrum nigrum, 60 seeds
      chill VER-20 2025-12-01, 4 C, at bag 3 slot 1
      count VER-20 2026-01-05, 0
            ^^^^^^ no-recent-count
      lot VER-21 Veratrum nigrum, 60 seeds
      warm VER-21 2026-01-05, 20 C, at bag 3 slot 2
           ^^^^^^ no-recent-count
      lot VER-22 Veratrum nigrum, 60 seeds
      soak VER-22 2026-01-03 19:00, water, 12 h
      lift VER-22 2026-01-04 07:00
      count VER-22 2026-01-05, 2
            ^^^^^^ no-recent-count
      # Nobody counts this one before its winter is over.
      lot VER-23 Veratrum nigrum, 60 seeds
      chill VER-23 2025-12-01, 4 C, at bag 3 slot 3
      lot VER-24 Veratrum nigrum, 60 seeds
      chill VER-24 2025-12-01, 4 C, 90 days, at bag 3 slot 4
      count VER-24 2026-01-05, 0
      lot VER-25 Veratrum nigrum, 60 seeds
      chill VER-25 2025-12-01, 4 C, at bag 3 slot 5
      count VER-25 2026-01-05, 20, 40 rotted
      pot VER-25 2026-01-05, 20 seedlings
    `, { now: '2026-03-08' });
  });

  test('is none where nothing is to be counted: not sown, closed, all given out, all accounted for', () => {
    expectMarked(codes, `
      lot VER-20 Veratrum nigrum, 60 seeds
      soak VER-20 2025-01-03, water, 12 h
      lot VER-21 Veratrum nigrum, 60 seeds
      sow VER-21 2025-01-03
      discard VER-21 2025-01-04, soft
      lot VER-22 Veratrum nigrum, 60 seeds
      sow VER-22 2025-01-03
      split VER-22 2025-02-03, A 60 seeds
      discard VER-22/A 2025-02-04, soft
      lot VER-23 Veratrum nigrum, 60 seeds
      sow VER-23 2025-01-03, 10 seeds
      count VER-23 2025-02-03, 7, 2 rotted, 1 lost
    `, { now: '2026-03-08' });
  });

  test('is none in the cold until that is meant to end', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-03
      chill VER-24 2026-01-10, 4 C, 90 days
    `;
    // 90 days after 2026-01-10 is 2026-04-10, and 56 days more 2026-06-05.
    expect(problemsIn('no-recent-count', source, { now: '2026-06-05' })).toEqual([]);
    expect(problemsIn('no-recent-count', source, { now: '2026-06-06' })).toHaveLength(1);
  });

  test('is none in the first cold of a regime, which has no record of its own, until that ends', () => {
    const source = `
      regime cold, chill 4 C 90 days, warm 18 C 60 days
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-10, regime cold
    `;
    // 90 days and 56 days after 2026-01-10.
    expect(problemsIn('no-recent-count', source, { now: '2026-06-05' })).toEqual([]);
    expect(problemsIn('no-recent-count', source, { now: '2026-06-06' })).toHaveLength(1);
  });

  test('is not said where a record of it cannot be read, for that may be the missing count', () => {
    const source = (date: string) => `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-03
      count VER-24 ${date}, 1
      split VER-24 2026-01-05, A 20 seeds
      sow VER-24/A 2026-01-06
    `;
    expect(problemsIn('no-recent-count', source('2026-03-32'), { now: '2026-04-10' })).toEqual([]);
    expect(problemsIn('no-recent-count', source('2026-01-04'), { now: '2026-04-10' })).toHaveLength(2);
  });

  test('begins anew when some seedlings are potted', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-03
      count VER-24 2026-01-10, 12 emerged
      pot VER-24 2026-03-01, 12 seedlings
    `;
    // 56 days after 2026-03-01 is 2026-04-26.
    expect(problemsIn('no-recent-count', source, { now: '2026-04-26' })).toEqual([]);
    expect(problemsIn('no-recent-count', source, { now: '2026-04-27' })).toMatchObject([{ start: 4, end: 10 }]);
  });

  test('goes by the same looks as the list of what is due', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-03, 20 seeds
      warm VER-24 2026-01-04, 20 C
      # Its roots wait for their shoots.
      count VER-24 2026-01-10, 20
            ^^^^^^ no-recent-count
      lot VER-25 Veratrum nigrum, 60 seeds
      sow VER-25 2026-01-03, 20 seeds
      count VER-25 2026-01-10, 20
      lot VER-26 Veratrum nigrum, 60 seeds
      sow VER-26 2025-11-03
      count VER-26 2026-03-01, 0
      # What was split off was looked at with the rest.
      split VER-26 2026-03-02, A 20 seeds
      lot VER-27 Veratrum nigrum, 20 seeds
      sow VER-27 2026-01-03, 20 seeds
      count VER-27 2026-01-10, 12, 8 rotted
      pot VER-27 2026-01-11, 12 seedlings
    `, { now: '2026-03-15' });
  });
});
