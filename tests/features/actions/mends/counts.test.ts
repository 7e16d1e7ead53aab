import { describe, expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

describe('more counted than there is', () => {
  test('were totals so far, where they read as such', () => {
    expect(mended('count-exceeds-sown', `
      --- a.germ
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-11
      count VER-24 2026-01-20, 3
      count VER-24 2026-01-27, 8 germinated, 1 rotted
      --- b.germ
      count VER-24 2026-02-03, 12 germinated, 1 rotted
                               ^^^^^^^^^^^^^
                                              ^^^^^^^^ count-exceeds-sown
    `)).toEqual([{
      title: 'Read the counts of VER-24 as totals so far: put “=” before each number',
      lines: ['count VER-24 2026-01-20, =3', 'count VER-24 2026-01-27, =8 germinated, =1 rotted', 'count VER-24 2026-02-03, =12 germinated, =1 rotted'],
      preferred: true, left: [],
    }]);
  });

  test.each([
    ['fall', ['9', '8', '12']], ['are too many all the same', ['9', '12', '21']],
    ['are one only', ['21']],
  ])('were not, where they %s', (_, counts) => {
    const lines = counts.map((count, n) => `count V 2026-02-0${n + 1}, ${count}`);
    lines.splice(-1, 1, `${lines.at(-1)!}\n${' '.repeat(20)}${'^'.repeat(counts.at(-1)!.length)} count-exceeds-sown`);
    expect(linesOf('count-exceeds-sown', `lot V Veratrum, 20 seeds\nsow V 2026-01-11\n${lines.join('\n')}`)).toEqual([]);
  });
});

test('the number that had been counted before may be the total so far', () => {
  // 17 of 20, and then 17 once more: 34 cannot be.
  expect(linesOf('count-exceeds-sown', `
    lot V Veratrum, 20 seeds
    sow V 2026-01-11
    count V 2026-02-01, 10
    count V 2026-02-02, 7
    count V 2026-02-03, 17
                        ^^ count-exceeds-sown
  `)).toEqual([['Change “17” to “=17”: the total so far', 'count V 2026-02-03, =17']]);
});

test.each([
  ['is no less than', ['9', '=9', '12'], ['Change “12” to “=12”: the total so far', 'count V 2026-02-03, =12']],
  ['is one of several counts above', ['9', '3 germinated, 9 emerged', '13'], ['Change “13” to “=13”: the total so far', 'count V 2026-02-03, =13']],
])('a number that %s what had been counted before may be the total so far', (_, counts, offered) => {
  const lines = counts.map((count, n) => `count V 2026-02-0${n + 1}, ${count}`);
  const marked = `${' '.repeat(20)}${'^'.repeat(counts.at(-1)!.length)} count-exceeds-sown`;
  expect(linesOf('count-exceeds-sown', `lot V Veratrum, 20 seeds\nsow V 2026-01-11\n${lines.join('\n')}\n${marked}`)).toEqual([offered]);
});

describe('a total that falls', () => {
  const source = (count: string) => `
    lot VER-24 Veratrum nigrum, 20 seeds
    sow VER-24 2026-01-11
    count VER-24 2026-01-20, =12
    count VER-24 2026-01-27, 1 rotted, ${count}
                                       ${'^'.repeat(count.length)} total-falls
  `;

  test('may be what is new, if there are seeds enough', () => {
    expect(linesOf('total-falls', source('= 4 germinated'))).toEqual([
      ['Change “=4” to “4”: what is new', 'count VER-24 2026-01-27, 1 rotted, 4 germinated'],
    ]);
    expect(linesOf('total-falls', source('=8'))).toEqual([]);
  });
});

describe('more than germinated', () => {
  const sown = 'lot VER-24 Veratrum nigrum, 12 seeds\n      sow VER-24 2026-01-11';

  test('that died has rotted, where nothing had germinated', () => {
    expect(mended('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 2 died
                               ^^^^^^ more-than-germinated
    `)).toEqual([{
      title: 'Change to “2 rotted”: it had not germinated', lines: ['count VER-24 2026-01-19, 2 rotted'], preferred: true, left: [],
    }]);
  });

  test('is not preferred where some of it had, and none where there are not so many seeds', () => {
    expect(mended('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 1, =3 died
                                  ^^^^^^^ more-than-germinated
    `).map(({ lines, preferred }) => [...lines, preferred])).toEqual([['count VER-24 2026-01-19, 1, =3 rotted', false]]);
    expect(linesOf('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 1, 12 died
                                  ^^^^^^^ more-than-germinated
    `)).toEqual([]);
    expect(linesOf('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 1 rotted, 2 died
                                         ^^^^^^ more-than-germinated
    `)).toEqual([]);
  });

  test('emerged raises the total of what germinated in the same count', () => {
    expect(linesOf('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, =3 germinated, =4 emerged
                                              ^^^^^^^^^^ more-than-germinated
    `)).toEqual([['Change “=3” to “=4”: what emerged has germinated', 'count VER-24 2026-01-19, =4 germinated, =4 emerged']]);
  });

  test('is leggy, and potted: any number may be wrong', () => {
    expect(linesOf('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 1, 2 leggy
                                  ^^^^^^^ more-than-germinated
    `)).toEqual([]);
    expect(linesOf('more-than-germinated', `
      ${sown}
      count VER-24 2026-01-19, 1
      pot VER-24 2026-02-19, 2 seedlings
                             ^^^^^^^^^^^ more-than-germinated
    `)).toEqual([]);
  });
});
