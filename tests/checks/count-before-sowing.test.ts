import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = '2026-03-20';

describe('a count of seed that was not sown yet', () => {
  test('is marked at its date, or at the batch where a day line says the date', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      count VER-24 2026-02-28, 0
                   ^^^^^^^^^^ count-before-sowing
      day 2026-02-27
      count VER-24, 0
            ^^^^^^ count-before-sowing
      day 2026-03-01
      sow VER-24
    `, { now });
  });

  test('is none on the day of sowing, whatever stands first', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      count VER-24 2026-03-01, 0
      sow VER-24 2026-03-01
    `, { now });
  });

  test('is marked where no sowing is written at all', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      count VER-24 2026-03-01, 0
                   ^^^^^^^^^^ count-before-sowing
    `, { now });
  });

  test('is none of seed that germinates in the cold, in its soak, or after it', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds
      chill VER-24/A 2026-01-10, 4 C, 60 days
      count VER-24/A 2026-02-01, 2
      sow VER-24/A 2026-03-11
      soak VER-24/B 2026-03-01 19:00, water, 24 h
      count VER-24/B 2026-03-01, 0
      count VER-24/B 2026-03-02, 1
      soak VER-24 2026-03-01 19:00, water, 24 h
      count VER-24 2026-03-09, 1
    `, { now });
  });

  test('is none of a batch that was split off after it was sown', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      split VER-24 2026-03-05, A 20 seeds, B 20 seeds
      count VER-24/A 2026-03-09, 1
    `, { now });
  });

  test('is not said while the sowing cannot be read', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-03-15
      sow VER-24 1/3/2026
                 ^^^^^^^^ day-first-date
      count VER-24 2026-03-09, 1
    `, { now });
  });

  test('says before what', () => {
    const message = (lines: string) => problemsIn('count-before-sowing', `lot V Veratrum, 6 seeds\ncount V 2026-02-01, 0\n${lines}`, { now })[0]
      ?.message.replace(' Correct a date, or write the “sow” record.', '');
    expect(message('sow V 2026-03-01')).toBe('This count of V is dated 2026-02-01, before it was sown on 2026-03-01.');
    expect(message('chill V 2026-03-01, 4 C')).toBe('This count of V is dated 2026-02-01, before anything was done to it (2026-03-01).');
    expect(message('')).toBe('This count of V is dated 2026-02-01, but no record says that it was sown.');
  });
});
