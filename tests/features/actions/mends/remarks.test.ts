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
