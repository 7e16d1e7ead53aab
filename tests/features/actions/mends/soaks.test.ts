import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('a lift that is missing', () => {
  test('is written before the next record, or the length is written on the soak', () => {
    expect(linesOf('lift-missing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, at jar
           ^^^^^^ lift-missing
      sow VER-24 2026-01-11 18:30
    `)).toEqual([
      ['Write “lift VER-24 2026-01-11 18:30” before the “sow”', 'lift VER-24 2026-01-11 18:30'],
      ['Write 23.5 h on the soak', 'soak VER-24 2026-01-10 19:00, GA3 500 ppm, at jar, 23.5 h'],
    ]);
  });

  test('takes its date from the day line, and has no time where nobody wrote one', () => {
    expect(linesOf('lift-missing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
           ^^^^^^ lift-missing
      day 2026-01-11
      sow VER-24
    `)).toEqual([['Write “lift VER-24 2026-01-11” before the “sow”', 'lift VER-24']]);
    expect(linesOf('lift-missing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
           ^^^^^^ lift-missing
      day 2026-01-11
      sow VER-24 19:07
    `)).toEqual([
      ['Write “lift VER-24 2026-01-11 19:07” before the “sow”', 'lift VER-24 19:07'],
      ['Write 1447 min on the soak', 'soak VER-24 2026-01-10 19:00, water, 1447 min'],
    ]);
  });

  test('leaves the length that was planned', () => {
    expect(linesOf('lift-missing', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 24 h
           ^^^^^^ lift-missing
      sow VER-24 2026-01-11 09:00
    `)).toEqual([['Write “lift VER-24 2026-01-11 09:00” before the “sow”', 'lift VER-24 2026-01-11 09:00']]);
  });

  test('is written for each batch that was split off in the soak', () => {
    expect(linesOf('lift-missing', `
      lot VER-24 Veratrum nigrum, 40 seeds
      soak VER-24 2026-01-10 19:00, water
           ^^^^^^ lift-missing
      split VER-24 2026-01-11 07:00, A 20 seeds, B 20 seeds
      sow VER-24/A 2026-01-11 08:00
      sow VER-24/B 2026-01-11 08:00
    `)).toEqual([
      ['Write the lifts of VER-24/A and VER-24/B before the next record', 'lift VER-24/A 2026-01-11 08:00', 'lift VER-24/B 2026-01-11 08:00'],
      ['Write 13 h on the soak', 'soak VER-24 2026-01-10 19:00, water, 13 h'],
    ]);
  });

  test('goes by the hours of summer time in a zone', () => {
    expect(linesOf('lift-missing', `
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 40 seeds
      soak VER-24 2026-03-28 19:00, water
           ^^^^^^ lift-missing
      sow VER-24 2026-03-29 19:00
    `, '2026-04-01')[1]).toEqual(['Write 23 h on the soak', 'soak VER-24 2026-03-28 19:00, water, 23 h']);
  });
});

describe('a soak that runs for too long', () => {
  const source = `
    lot VER-24 Veratrum nigrum, 60 seeds
    soak VER-24 2026-01-10 19:00, water
         ^^^^^^ soak-too-long
    note VER-24 2026-01-10, in the jar
  `;

  test('ends now', () => {
    expect(mended('soak-too-long', source, '2026-01-12 08:30')).toEqual([{
      title: 'Write “lift VER-24 2026-01-12 08:30”: the seed comes out now', preferred: false,
      lines: ['day 2026-01-12', 'lift VER-24 2026-01-12 08:30'], left: ['soak-too-long'],
    }]);
  });

  test('is too long all the same where it ended', () => {
    expect(linesOf('soak-too-long', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 40 h
                                           ^^^^ soak-too-long
    `)).toEqual([]);
  });
});

describe('an end before the start', () => {
  test.each([
    ['2026-01-10 19:00', '2026-01-10 07:00', '2026-01-11'],
    ['2025-12-31 19:00', '2025-01-01 19:00', '2026-01-01'],
  ])('of a soak from %s until %s is meant for %s', (start, until, day) => {
    expect(mended('end-before-start', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 ${start}, water, until ${until}
                                           ${'^'.repeat(22)} end-before-start
    `)).toEqual([{
      title: `Change to “${day}”`, lines: [`soak VER-24 ${start}, water, until ${day} ${until.slice(11)}`], preferred: true, left: [],
    }]);
  });

  test('by days may be any other', () => {
    expect(linesOf('end-before-start', `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, until 2026-01-01 19:00
                                           ^^^^^^^^^^^^^^^^^^^^^^ end-before-start
    `)).toEqual([]);
  });
});

describe('a lift of what is in no soak', () => {
  const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\n      split VER-24, A 20 seeds, B 20 seeds';

  test('is of the batch of the lot that is in one', () => {
    expect(mended('lift-without-soak', `
      ${lot}
      soak VER-24/B 2026-01-10 19:00, water
      lift VER-24 2026-01-11 18:00
           ^^^^^^ lift-without-soak
    `)).toEqual([{
      title: 'Change to “VER-24/B”, which is in a soak', lines: ['lift VER-24/B 2026-01-11 18:00'], preferred: true, left: [],
    }]);
  });

  test('is of any of several, but of none that is out again or goes in later', () => {
    expect(mended('lift-without-soak', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds, B 20 seeds, C 9 seeds, D 9 seeds
      soak VER-24/A 2026-01-10 19:00, water, 24 h
      soak VER-24/B 2026-01-10 19:00, water, until 2026-01-11 19:00
      soak VER-24/C 2026-01-09 19:00, water
      lift VER-24/C 2026-01-10 19:00
      soak VER-24/D 2026-01-12 19:00, water, 24 h
      lift VER-24 2026-01-11 18:00
           ^^^^^^ lift-without-soak
    `).map(({ lines, preferred }) => [...lines, preferred])).toEqual([
      ['lift VER-24/A 2026-01-11 18:00', false], ['lift VER-24/B 2026-01-11 18:00', false],
    ]);
  });

  test('before its soak is of the day or the year after', () => {
    const lift = (date: string) => linesOf('lift-without-soak', `
      ${lot}
      soak VER-24/A 2026-01-01 19:00, water, 24 h
      lift VER-24/A ${date}
           ^^^^^^^^ lift-without-soak
    `);
    expect(lift('2025-01-02 18:00')).toEqual([['Change to “2026-01-02”', 'lift VER-24/A 2026-01-02 18:00']]);
    expect(lift('2026-01-01 08:00')).toEqual([['Change to “2026-01-02”', 'lift VER-24/A 2026-01-02 08:00']]);
    expect(lift('2025-05-05 18:00')).toEqual([]);
  });
});
