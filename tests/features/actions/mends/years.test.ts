import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('a date that is a year off', () => {
  test('of a count is after the sowing then', () => {
    expect(mended('count-before-sowing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2025-12-28
      count VER-24 2025-01-04, 0
                   ^^^^^^^^^^ count-before-sowing
    `)).toEqual([{
      title: 'Change to “2026-01-04”: a year later', lines: ['count VER-24 2026-01-04, 0'], preferred: false, left: [],
    }]);
  });

  test('of a sowing is after the harvest then', () => {
    expect(linesOf('sown-before-collected', `
      lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09
      sow VER-24 2025-01-11
                 ^^^^^^^^^^ sown-before-collected
    `)).toEqual([['Change to “2026-01-11”: a year later', 'sow VER-24 2026-01-11']]);
  });

  test('of what is taken from a stock is after that was made then', () => {
    expect(linesOf('draw-before-made', `
      stock G1 2025-12-30, GA3 20 mg, 20 mL
      dilute G2 2025-01-02, from G1 10 mL, to 20 mL
                                 ^^ draw-before-made
    `)).toEqual([['Change to “2026-01-02”: a year later', 'dilute G2 2026-01-02, from G1 10 mL, to 20 mL']]);
  });

  test('of a record after the close is before it then', () => {
    expect(linesOf('after-close', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2025-01-11
      discard VER-24 2025-06-01, all soft
      count VER-24 2026-03-01, 0
            ^^^^^^ after-close
    `)).toEqual([['Change to “2025-03-01”: a year before', 'count VER-24 2025-03-01, 0']]);
  });

  test('of a record after the close is not on the day of the close, when the batch was closed already', () => {
    const source = (day: string) => `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2025-01-11
      discard VER-24 2025-03-01, all soft
      count VER-24 ${day}, 0
            ^^^^^^ after-close
    `;
    expect(linesOf('after-close', source('2026-03-01'))).toEqual([]);
    expect(linesOf('after-close', source('2026-02-28'))).toEqual([['Change to “2025-02-28”: a year before', 'count VER-24 2025-02-28, 0']]);
  });

  test.each([
    ['it would be of a day to come', 'sow VER-24 2026-02-01\ncount VER-24 2025-08-01, 0\n             ^^^^^^^^^^ count-before-sowing'],
    ['it would still be too early', 'sow VER-24 2026-02-01\ncount VER-24 2024-02-01, 0\n             ^^^^^^^^^^ count-before-sowing'],
    ['it stands in a day line', 'sow VER-24 2025-12-28\nday 2025-01-04\ncount VER-24, 0\n      ^^^^^^ count-before-sowing'],
    ['nothing was sown', 'count VER-24 2025-08-01, 0\n             ^^^^^^^^^^ count-before-sowing'],
  ])('is none where %s', (_, source) => {
    expect(linesOf('count-before-sowing', `lot VER-24 Veratrum nigrum, 60 seeds\n${source}`)).toEqual([]);
  });
});
