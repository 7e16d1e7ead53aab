import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesBetween } from '../../server/src/changes/changes.ts';
import { journal } from '../support/arbitrary-journal.ts';

const BEFORE = `lot GEN-26 Gentiana lutea, 60 seeds
split GEN-26, A 24 seeds, B 24 seeds

day 2026-01-10
soak GEN-26/A, GA3 500 ppm, 30 h
day 2026-01-12
sow GEN-26/A
sow GEN-26/B, at tray 5

day 2026-02-01
count GEN-26/A, 3
  White.
count GEN-26/B, 0
`;

/** Each change as one line. */
function told(after: string, before = BEFORE): string[] {
  return changesBetween(new Map([['a.germ', before]]), new Map([['a.germ', after]]))
    .map(({ about, words }) => `${about}: ${words.join('; ')}`);
}

describe('the changes between two states of a journal', () => {
  it('tell what is new and what is another in the words of a grower, with what it comes to', () => {
    const after = `${BEFORE.replace('30 h', '24 h')}\nday 2026-02-08\ncount GEN-26/A, 3, 1 rotted\ncount GEN-26/B, 0\n`;
    expect(told(after)).toEqual([
      'GEN-26/A: soak on 10 January 2026 now 24 h instead of 30 h; 3 more germinated, 1 more rotted on 8 February 2026; ' +
        'germinated 6 of 24 = 25 % instead of 3 of 24 = 12.5 %',
      'GEN-26/B: none germinated on 8 February 2026',
    ]);
  });

  it.each([
    ['a record taken out', 'count GEN-26/A, 3\n  White.\n', '', 'GEN-26/A: removed: count on 1 February 2026, 3'],
    ['another day', 'day 2026-02-01', 'day 2026-02-02', 'GEN-26/A: count now on 2 February 2026 instead of 1 February 2026'],
    ['a fact more', 'sow GEN-26/B, at', 'sow GEN-26/B, 15 C, at', 'GEN-26/B: sow on 12 January 2026 now also 15 C'],
    ['a fact less', ', at tray 5', '', 'GEN-26/B: sow on 12 January 2026 no longer at tray 5'],
    ['a time', 'sow GEN-26/A', 'sow GEN-26/A 19:00', 'GEN-26/A: sow on 12 January 2026 now at 19:00'],
    ['another batch', 'count GEN-26/B, 0', 'count GEN-26, 0', 'GEN-26: count on 1 February 2026 now of GEN-26 instead of GEN-26/B'],
    ['another plant', 'Gentiana lutea', 'Gentiana alba', 'GEN-26: lot now of Gentiana alba instead of Gentiana lutea'],
    ['a total', 'count GEN-26/A, 3', 'count GEN-26/A, =3', 'GEN-26/A: count on 1 February 2026 now =3 instead of 3'],
    ['a remark', 'White.', 'Yellow.', 'GEN-26/A: remark on “count” on 1 February 2026: Yellow.; remark on “count” on 1 February 2026 removed: White.'],
    ['a line with a slip', 'count GEN-26/B, 0', 'cuont GEN-26/B, 0', ': “count GEN-26/B, 0” is now “cuont GEN-26/B, 0”'],
  ])('tell %s', (_, from, to, line) => {
    const all = told(BEFORE.replace(from, to));
    expect(all.some(each => each.startsWith(line)), JSON.stringify(all)).toBe(true);
  });

  it.each([
    ['of a lot', 'about 40 seeds', '38 seeds', 'GEN-27: lot now 38 seeds instead of about 40 seeds; germinated 10 of 38 = 26.3 % instead of 10 of 36 to 44 = 22.7 to 27.8 %'],
    ['of a lot, counted less well', '38 seeds', '36 to 44 seeds', 'GEN-27: lot now 36 to 44 seeds instead of 38 seeds; germinated 10 of 36 to 44 = 22.7 to 27.8 % instead of 10 of 38 = 26.3 %'],
    ['that is narrower', 'about 40 seeds', '39 to 41 seeds', 'GEN-27: lot now 39 to 41 seeds instead of about 40 seeds; germinated 10 of 39 to 41 = 24.4 to 25.6 % instead of 10 of 36 to 44 = 22.7 to 27.8 %'],
    ['written otherwise only', 'about 40 seeds', 'ABOUT  40  seeds', undefined],
  ])('tell an estimate %s as a range, and a count as a number', (_, from, to, line) => {
    const journal = (seeds: string) => `lot GEN-27 Gentiana lutea, ${seeds}\nsow GEN-27 2026-01-12\ncount GEN-27 2026-02-01, 10\n`;
    expect(told(journal(to), journal(from))).toEqual(line === undefined ? [] : [line]);
  });

  it('tell parts that were halved by eye and counted later', () => {
    const journal = (parts: string) => `lot L Iris, 40 seeds\nsplit L, ${parts}\nsow L/A 2026-01-12\ncount L/A 2026-02-01, 9\n`;
    expect(told(journal('A 18 seeds, B 22 seeds'), journal('A half, B half'))).toEqual([
      'L: split now A 18 seeds instead of A half; split now B 22 seeds instead of B half',
      'L/A: germinated 9 of 18 = 50 % instead of 9 of 18 to 22 = 40.9 to 50 %',
    ]);
  });

  it('are none where a record moved, was formatted or has its date written out, into another file too', () => {
    expect(told(BEFORE.replace('day 2026-02-01\n', '').replace('A, 3', 'A 2026-02-01,  3').replace('B, 0', 'B 2026-02-01, 0'))).toEqual([]);
    fc.assert(fc.property(journal, ({ files }) => {
      const before = new Map(files.map(({ name, text }) => [name, text]));
      const moved = new Map(files.map(({ name, text }) => [`z-${9 - Number(name.charAt(0))}.germ`, `# Moved\n${text.replaceAll('\n', '\r\n')}`]));
      expect(changesBetween(before, moved)).toEqual([]);
    }), { numRuns: 40 });
  });
});
