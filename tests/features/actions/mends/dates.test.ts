import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('a record without a date', () => {
  test('is dated today, as the records above and below, or by a day line', () => {
    expect(linesOf('missing-date', `
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      due VER-24 2026-05-01, look
      soak VER-24 19:00, G1 10 mL, 24 h
      ^^^^ missing-date
      day 2026-01-12
      sow VER-24 19:10
    `)).toEqual([
      ['Date it 2026-03-01: today', 'soak VER-24 2026-03-01 19:00, G1 10 mL, 24 h'],
      ['Date it 2026-01-09: as above', 'soak VER-24 2026-01-09 19:00, G1 10 mL, 24 h'],
      ['Date it 2026-01-12: as below', 'soak VER-24 2026-01-12 19:00, G1 10 mL, 24 h'],
      ['Write “day 2026-03-01” above it', 'day 2026-03-01'],
    ]);
  });

  test('and without a time is dated behind its subject; no date is offered twice', () => {
    const fixes = mended('missing-date', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24, 60 seeds
      ^^^ missing-date
      count VER-24 2026-03-01, 3
    `);
    expect(fixes.map(({ lines }) => lines)).toEqual([['sow VER-24 2026-03-01, 60 seeds'], ['day 2026-03-01']]);
    expect(fixes.every(({ preferred }) => !preferred)).toBe(true);
  });
});

describe('a count of a day to come', () => {
  const source = (date: string) => `
    lot VER-24 Veratrum nigrum, 60 seeds
    sow VER-24 2025-11-01
    count VER-24 ${date}, 3
                 ^^^^^^^^^^ count-in-future
  `;

  test('was meant for the year before, where that was not long ago', () => {
    expect(linesOf('count-in-future', source('2026-12-28'), '2026-01-03')).toEqual([
      ['Change to “2025-12-28”: a year before', 'count VER-24 2025-12-28, 3'],
    ]);
    expect(linesOf('count-in-future', source('2026-06-28'), '2026-01-03')).toEqual([]);
    expect(linesOf('count-in-future', source('2028-01-02'), '2026-01-03')).toEqual([]);
  });

  test('by its day line has no date to change', () => {
    expect(linesOf('count-in-future', `
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2025-11-01
      day 2026-12-28
      count VER-24, 3
            ^^^^^^ count-in-future
    `, '2026-01-03')).toEqual([]);
  });
});

describe('a day by its name', () => {
  test.each([
    ['bad-date', 'day yesterday', 'day 2026-02-28', '    ^^^^^^^^^'],
    ['bad-date', 'count VER-24 Today, 3', 'count VER-24 2026-03-01, 3', '             ^^^^^'],
    ['bad-value', 'soak VER-24 2026-03-01, water, until tomorrow', 'soak VER-24 2026-03-01, water, until 2026-03-02', `${' '.repeat(37)}^^^^^^^^`],
    ['bad-date', 'lot X-1 Iris, collected yesterday', 'lot X-1 Iris, collected 2026-02-28', `${' '.repeat(24)}^^^^^^^^^`],
  ] as const)('%s: %s is %s', (code, written, meant, mark) => {
    const [fix] = mended(code, `lot VER-24 Veratrum nigrum, 60 seeds\nsow VER-24 2026-02-01\n${written}\n${mark} ${code}\n`);
    expect(fix).toMatchObject({ lines: [meant], preferred: true });
  });
});
