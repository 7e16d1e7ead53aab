import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['lift-missing', 'lift-without-soak', 'soak-too-long'] as const;
const now = '2026-03-01';

describe('a soak whose end is not written', () => {
  test.each([
    'sow VER-24 2026-01-11', 'chill VER-24 2026-01-11, 4 C', 'warm VER-24 2026-01-11, 20 C', 'count VER-24 2026-01-11, 0',
    'soak VER-24 2026-01-11, GA3 100 ppm, 12 h',
  ])('is marked when it is followed by: %s', next => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
           ^^^^^^ lift-missing
      ${next}
    `, { now });
  });

  test.each(['lift VER-24 2026-01-11 12:00', 'discard VER-24 2026-01-11, spilt', 'cut VER-24 2026-01-11, 60 dead'])(
    'is not when it is followed by: %s', next => {
      expectMarked(codes, `
        lot VER-24 Veratrum nigrum, 60 seeds
        soak VER-24 2026-01-10 19:00, water
        ${next}
      `, { now });
    });

  test.each(['24 h', 'until 2026-01-11 19:00', 'until 2026-01-11', '1 day'])('is written where the soak says %s', end => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, ${end}
      sow VER-24 2026-01-11 20:00
    `, { now });
  });

  test('is not known either where the seed goes on before the end that was planned', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 24 h
           ^^^^^^ lift-missing
      sow VER-24 2026-01-11 09:00
    `, { now });
  });

  test('is asked for in words that fit: a span that is there need not be written', () => {
    const advice = (end: string) => problemsIn('lift-missing',
      `lot V Veratrum\nsoak V 2026-01-10 19:00, water${end}\nsow V 2026-01-11 09:00`, { now })[0]?.message.replace(/^.*? out of this soak\. /, '');
    expect(advice('')).toBe('Write a “lift”, or write on the soak how long it lasted.');
    expect(advice(', 24 h')).toBe('The planned end comes after that: write a “lift”, or correct a date.');
  });

  test('is missing too where nothing at all followed, once nobody would have left the seed in it so long', () => {
    const source = 'lot V Veratrum\nsoak V 2024-10-06, GA3 500 ppm';
    // From 6 October 2024 to 28 November 2026: 365 days to 6 October 2025, 365 to 2026, and 53.
    expect(problemsIn('lift-missing', source, { now: '2026-11-28' }).map(({ message }) => message)).toEqual([
      'V: no end recorded; it began 783 days ago. Write a “lift” with the day on which the seed came out. '
        + 'If you do not know it, leave it out: the length of the soak then stays unknown.',
    ]);
    expect(problemsIn('soak-too-long', source, { now: '2026-11-28' })).toEqual([]);
    expect(problemsIn('lift-missing', source, { now: '2024-11-01' })).toEqual([]);
    for (const later of ['scarify V 2024-12-01', 'apply V 2024-12-01, GA3 100 ppm', 'pot V 2024-12-01', 'move V 2024-12-01, at frame']) {
      expect(problemsIn('lift-missing', `${source}\n${later}`, { now: '2026-11-28' }).map(({ message }) => message), later)
        .toEqual([expect.stringContaining('follows on 2024-12-01')]);
    }
    // The jar may have been carried to the window sill, with the seed in it.
    expect(problemsIn('lift-missing', `${source}\nmove V 2024-10-07, at sill`, { now: '2024-10-20' })).toEqual([]);
  });

  test('may be told by a lift after a look into the jar', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-10
      soak VER-24 19:00, GA3 unmeasured
      day 2026-01-11
      count VER-24 09:00, 0
      lift VER-24 19:00
    `, { now });
  });

  test('is marked once for the batches that were split off in it', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 40 seeds
      soak VER-24 2026-01-10 19:00, water
           ^^^^^^ lift-missing
      split VER-24 2026-01-11 07:00, A 20 seeds, B 20 seeds
      sow VER-24/A 2026-01-11
      sow VER-24/B 2026-01-11
    `;
    expectMarked(codes, source, { now });
    expect(problemsIn('lift-missing', source.replace(/\^+ lift-missing/, ''), { now })[0]?.message)
      .toMatch(/^VER-24\/A and VER-24\/B: “sow” follows on 2026-01-11, but no “lift” says when the seed came out of this soak\./);
  });

  test('is not said where the line of the soak could not be read in full', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 24 hoors
      sow VER-24 2026-01-12
    `, { now });
  });
});
