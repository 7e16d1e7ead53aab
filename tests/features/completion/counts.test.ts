import { describe, expect, test } from 'vitest';
import { labels, offered, taken } from './offered.ts';

const journal = `
  lot VER-24 Veratrum nigrum, 24 seeds
  sow VER-24 2026-01-11
  count VER-24 2026-01-15, 10, 4 emerged, 1 leaf, 2 rotted, 1 lost, 1 died`;

const at = (line: string, marks: string) => labels(offered(`${journal}\n  ${line}\n  ${marks}`));

describe('what can be counted', () => {
  test('comes with the number that is still possible of 24 seeds: 10 germinated, 2 rotted, 1 lost', () => {
    expect(at('count VER-24 2026-01-19, ', '                        ^ here')).toEqual([
      'germinated · at most 11 more', 'emerged · at most 17 more', 'leaf · at most 20 more', 'rotted · at most 11 more',
      'died · at most 9 more', 'lost · at most 11 more', 'leggy · at most 10 more', 'abnormal · at most 10 more',
      'stuck · at most 10 more', 'freed · at most 10 more', '0 · nothing new',
      'look again …',
    ]);
  });

  test('leaves out what the line has already, and counts it', () => {
    expect(at('count VER-24 2026-01-19, 8 germinated, 3 rotted, ', '                                                ^ here')).toEqual([
      'emerged · at most 14 more', 'leaf · at most 17 more', 'died · at most 17 more', 'leggy · at most 18 more', 'abnormal · at most 18 more',
      'stuck · at most 18 more', 'freed · at most 18 more', 'lost · no more possible',
      'look again …',
    ]);
  });

  test('is about what was there before, wherever in the line the cursor is', () => {
    expect(at('count VER-24 2026-01-14, 3 , 2 rotted', '                          ^ here')[0]).toBe('3 · germinated · at most 22 more');
  });

  test('is a total behind =', () => {
    expect(at('count VER-24 2026-01-19, =3', '                          ^ here').slice(0, 2)).toEqual([
      '=3 · germinated · a total of 21 at most', '=3 emerged · a total of 21 at most',
    ]);
  });

  test('goes with the letters behind the number, and replaces both', () => {
    const source = `${journal}\n  count VER-24 2026-01-19, 3 r, 1 lost\n                             ^ here`;
    const found = offered(source)!;
    expect(labels(found)).toEqual(['3 rotted · at most 10 more']);
    expect(taken(source, found.items[0]!, found)).toBe('count VER-24 2026-01-19, 3 rotted, 1 lost');
  });

  test('has no number where the seeds are not known', () => {
    expect(labels(offered('\n  lot X-1 Iris\n  sow X-1 2026-01-11\n  count X-1 2026-01-19, \n                       ^ here'))[0]).toBe('germinated');
    expect(labels(offered('\n  count X-1 2026-01-19, \n                       ^ here'))[0]).toBe('germinated');
  });
});

describe('a number that is typed', () => {
  const ends = (line: string) => `${journal}\n  ${line}\n${' '.repeat(line.length + 1)}^ here`;
  const line = (typed: string) => ends(`count VER-24 2026-01-19, ${typed}`);

  test('is taken as it stands, without a word, and the list is asked for again as digits come', () => {
    const [one, twelve] = [offered(line('1'))!, offered(line('12'))!];
    expect([one.incomplete, taken(line('1'), one.items[0]!, one)]).toEqual([true, 'count VER-24 2026-01-19, 1']);
    expect(taken(line('12'), twelve.items[0]!, twelve)).toBe('count VER-24 2026-01-19, 12');
    // Germinated comes first even where no more can have.
    expect(twelve.items[0]!.detail).toBe('germinated · at most 11 more');
  });

  test('is text that the next key does not write over', () => {
    for (const source of [line('1'), ends('split VER-24, A 1'), ends('sow VER-24 2026-01-12, 24')]) {
      const found = offered(source)!;
      expect(found.items.length).toBeGreaterThan(0);
      for (const { write = [] } of found.items) expect(write.every(part => typeof part === 'string')).toBe(true);
    }
  });
});

describe('a cut test', () => {
  test('says how many are left to sort, and makes up none of them', () => {
    const source = `${journal}\n  cut VER-24 2026-02-01, 8 fresh, \n                                 ^ here`;
    const found = offered(source)!;
    expect(labels(found)).toEqual(['hard · 3 left to sort', 'dead · 3 left to sort', 'empty · 3 left to sort']);
    expect(taken(source, found.items[1]!, found)).toBe('cut VER-24 2026-02-01, 8 fresh, 1 dead');
  });
});
