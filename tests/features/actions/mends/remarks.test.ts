import { describe, expect, test } from 'vitest';
import { linesOf } from './mending.ts';

const lot = 'lot VER-24 Veratrum nigrum, 60 seeds';

describe('what is no fact goes into a remark below', () => {
  test('from behind a comma, from the end, and from between', () => {
    expect(linesOf('unknown-fact', `
      ${lot}
      lift VER-24 2026-01-11, gently
                              ^^^^^^ unknown-fact
        In the morning.
    `)).toEqual([['Move “gently” to a remark below', 'lift VER-24 2026-01-11', '  gently']]);
    expect(linesOf('stray-text', `
      ${lot}
      count VER-24 2026-01-19, 3 # three
                                 ^^^^^^^ stray-text
    `)).toEqual([['Move “three” to a remark below', 'count VER-24 2026-01-19, 3', '  three']]);
    expect(linesOf('unknown-fact', `
      ${lot}
      count VER-24 2026-01-19, all fine, 3
                               ^^^ unknown-fact
    `)).toEqual([['Move “all fine” to a remark below', 'count VER-24 2026-01-19, 3', '  all fine']]);
  });

  test.each([
    ['another fix is at hand', 'unknown-fact', 'count VER-24 2026-01-19, 3 sprouted\n                           ^^^^^^^^ unknown-fact'],
    ['the record needs a fact', 'unknown-fact', 'limit soak, 1000 ppm\n            ^^^^^^^^ unknown-fact'],
  ] as const)('but not where %s', (_, code, source) => {
    expect(linesOf(code, `${lot}\n${source}`).filter(([title]) => title.startsWith('Move'))).toEqual([]);
  });
});

describe('an estimate where only a count can stand', () => {
  const sown = `${lot}\nsow VER-24 2026-01-10`;

  test('leaves its number there and its words in a remark below, or goes there whole', () => {
    expect(linesOf('unknown-fact', `
      ${sown}
      count VER-24 2026-01-19, about 40, 2 rotted
                               ^^^^^ unknown-fact
        In the morning.
    `)).toEqual([
      ['Write “40”, and “about 40” in a remark below', 'count VER-24 2026-01-19, 40, 2 rotted', '  about 40'],
      ['Move “about 40” to a remark below', 'count VER-24 2026-01-19, 2 rotted', '  about 40'],
    ]);
    expect(linesOf('stray-text', `
      ${sown}
      count VER-24 2026-01-19, =9 germinated?, 2 rotted
                                            ^ stray-text
    `)[0]).toEqual([
      'Write “=9 germinated”, and “=9 germinated?” in a remark below', 'count VER-24 2026-01-19, =9 germinated, 2 rotted', '  =9 germinated?',
    ]);
    expect(linesOf('unknown-fact', `
      ${lot}
      soak VER-24 2026-01-10, water, roughly 24 h, at jar 1
                                     ^^^^^^^ unknown-fact
    `)[0]).toEqual([
      'Write “24 h”, and “roughly 24 h” in a remark below', 'soak VER-24 2026-01-10, water, 24 h, at jar 1', '  roughly 24 h',
    ]);
  });

  test('one of two on a line leaves the other for its own fix', () => {
    const found = linesOf('stray-text', `
      ${sown}
      count VER-24 2026-01-19, 3?, about 2 rotted
                                ^ stray-text
                                   ^^^^^ unknown-fact
    `);
    expect(found).toEqual([['Write “3”, and “3?” in a remark below', 'count VER-24 2026-01-19, 3, about 2 rotted', '  3?']]);
  });

  test('is not seen in words that follow a number', () => {
    expect(linesOf('stray-text', `
      ${sown}
      count VER-24 2026-01-19, 3 germinated slowly
                                            ^^^^^^ stray-text
    `)).toEqual([['Move “slowly” to a remark below', 'count VER-24 2026-01-19, 3 germinated', '  slowly']]);
  });
});
