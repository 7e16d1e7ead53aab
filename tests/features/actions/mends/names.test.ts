import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('a name that is given twice', () => {
  test('is another one in the second place', () => {
    expect(linesOf('duplicate-definition', `
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      lot VER-24-2 Veratrum album, 60 seeds
      --- b.germ
      lot VER-24 Veratrum viride, 12 seeds
          ^^^^^^ duplicate-definition
    `)).toEqual([['Call this one “VER-24-3”', 'lot VER-24-3 Veratrum viride, 12 seeds']]);
  });

  test('is none of an agent', () => {
    expect(linesOf('duplicate-definition', `
      stock GA3 2026-01-09, GA3 20 mg, 20 mL
            ^^^ duplicate-definition
    `)).toEqual([['Call this one “GA3-2”', 'stock GA3-2 2026-01-09, GA3 20 mg, 20 mL']]);
  });

  test('goes with its line where that says the very same again', () => {
    const [fix, ...others] = mended('duplicate-definition', `
      lot VER-24 Veratrum nigrum, 60 seeds
      lot VER-24 Veratrum nigrum, 60 seeds
          ^^^^^^ duplicate-definition
      sow VER-24 2026-01-11
    `);
    expect(fix).toEqual({ title: 'Delete this line', lines: [], preferred: true, left: [] });
    expect(others.map(({ title }) => title)).toEqual(['Call this one “VER-24-2”']);
  });

  test('stays with a remark that would come to stand below another record', () => {
    expect(linesOf('duplicate-definition', `
      lot VER-24 Veratrum nigrum, 60 seeds
      lot VER-24 Veratrum nigrum, 60 seeds
          ^^^^^^ duplicate-definition
        From the rock garden.
    `)).toEqual([['Call this one “VER-24-2”', 'lot VER-24-2 Veratrum nigrum, 60 seeds']]);
  });

  test('of batches is the next letter', () => {
    expect(linesOf('duplicate-definition', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, C 10 seeds
      split VER-24, A 12 seeds, D 4 seeds, C 5 seeds
            ^^^^^^ duplicate-definition
      note VER-24/B 2026-01-11, who split that off
    `)).toEqual([
      ['Call “A” “E” and “C” “F”', 'split VER-24, E 12 seeds, D 4 seeds, F 5 seeds'],
    ]);
  });

  test('of a split that is written twice goes with its line', () => {
    expect(mended('duplicate-definition', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds
      split VER-24, A 10 seeds
            ^^^^^^ duplicate-definition
      sow VER-24/A 2026-01-11
    `)[0]).toEqual({ title: 'Delete this line', lines: [], preferred: true, left: [] });
  });

  test('of another zone goes with its line', () => {
    expect(linesOf('duplicate-definition', `
      zone Europe/Vienna
      zone Europe/Paris
           ^^^^^^^^^^^^ duplicate-definition
      lot VER-24 Veratrum nigrum, 60 seeds
    `)).toEqual([['Delete this line']]);
  });
});

describe('a batch that was never split off', () => {
  test('is split off with the seeds that were sown of it, below the last split', () => {
    expect(mended('unknown-batch', `
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
        From the rock garden.
      split VER-24, A 24 seeds
      --- b.germ
      sow VER-24/B 2026-01-11, 24 seeds
          ^^^^^^^^ unknown-batch
      count VER-24/B 2026-01-19, 3
    `)).toEqual([{
      title: 'Write “split VER-24, B 24 seeds”', lines: ['split VER-24, B 24 seeds'], preferred: false, left: [],
    }, {
      title: 'Change to “VER-24/A”', lines: ['sow VER-24/A 2026-01-11, 24 seeds'], preferred: false, left: ['unknown-batch'],
    }]);
  });

  test.each([
    ['how many nobody wrote', 60, 'sow VER-24/B 2026-01-11'], ['the lot has not so many', 40, 'sow VER-24/B 2026-01-11, 24 seeds'],
    ['it was sown twice', 60, 'sow VER-24/B 2026-01-11, 24 seeds\nsow VER-24/B 2026-01-12, 24 seeds'],
    ['its parent is not there either', 60, 'sow VER-24/B/1 2026-01-11, 24 seeds'],
  ])('is not where %s', (_, seeds, line) => {
    const [first = '', ...rest] = line.split('\n');
    const path = /VER\S+/.exec(first)![0];
    expect(linesOf('unknown-batch', [
      `lot VER-24 Veratrum nigrum, ${seeds} seeds`, 'split VER-24, A 24 seeds', first,
      `    ${'^'.repeat(path.length)} unknown-batch`, ...rest,
    ].join('\n')).filter(([title]) => title.startsWith('Write'))).toEqual([]);
  });

  test('is not where the split would come after the sowing', () => {
    expect(linesOf('unknown-batch', `
      day 2026-02-01
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24/B 2026-01-11, 24 seeds
          ^^^^^^^^ unknown-batch
    `)).toEqual([['Change to “VER-24”', 'sow VER-24 2026-01-11, 24 seeds']]);
  });

  const split = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 9 seeds, B 9 seeds, D 9 seeds, E 9 seeds';

  test('may be one of those next to it by name, an open one before a closed one', () => {
    expect(linesOf('unknown-batch', `${split}\ncount VER-24/C 2026-01-19, 0\n      ^^^^^^^^ unknown-batch`)).toEqual([
      ['Change to “VER-24/B”', 'count VER-24/B 2026-01-19, 0'], ['Change to “VER-24/D”', 'count VER-24/D 2026-01-19, 0'],
      ['Change to “VER-24/A”', 'count VER-24/A 2026-01-19, 0'],
    ]);
    const closed = `${split}\ndiscard VER-24/B 2026-01-12`;
    expect(linesOf('unknown-batch', `${closed}\ncount VER-24/C 2026-01-19, 0\n      ^^^^^^^^ unknown-batch`).map(([title]) => title))
      .toEqual(['Change to “VER-24/D”', 'Change to “VER-24/A”', 'Change to “VER-24/E”']);
  });

  test('is another one only where that has the part that the record names', () => {
    const parts = `${split}\nsplit VER-24/D, 1 4 seeds, 2 4 seeds`;
    expect(linesOf('unknown-batch', `${parts}\nsow VER-24/C/2 2026-01-19\n    ^^^^^^^^ unknown-batch`))
      .toEqual([['Change to “VER-24/D”', 'sow VER-24/D/2 2026-01-19']]);
  });

  test('is the one that a long name is a slip of, and no other', () => {
    expect(linesOf('unknown-batch', `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 9 seeds, north 9 seeds
      count VER-24/norht 2026-01-19, 0
            ^^^^^^^^^^^^ unknown-batch
    `)).toEqual([['Change to “VER-24/north”', 'count VER-24/north 2026-01-19, 0']]);
  });
});
