import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { countsOf, DAY_ZERO, diaryOf, textOf } from './diary.ts';
import { journalOf } from './judged.ts';
import { lotOf, LADDER } from './lots.ts';
import { randomOf } from './random.ts';

const never = { leggy: Infinity, abnormal: Infinity, dies: Infinity };

describe('the diary of simulated seed', () => {
  test('a look finds what is new since the look before, and nothing that is still to come', () => {
    const dish = {
      seeds: 7,
      seedlings: [
        { ...never, up: 3.2 },
        { ...never, up: 7, leggy: 9 },
        { ...never, up: 8, leggy: 12, dies: 13.5 },
        { ...never, up: 40 },
      ],
      rots: [10],
      losses: [15],
    };
    const lines = countsOf(randomOf('diary'), dish, { looks: [7, 14, 21], end: 'open' }, 'L/A1');
    expect(lines.map(({ text }) => text)).toEqual([
      'count L/A1 2026-01-08 20:00, 2',
      'count L/A1 2026-01-15 20:00, 1, 2 leggy, 1 died, 1 rotted',
      'count L/A1 2026-01-22 20:00, 0, 1 lost',
    ]);
    const cut = countsOf(randomOf('diary'), { ...dish, seeds: 5, losses: [] }, { looks: [7, 14], end: 'cut' }, 'L/A1');
    expect(cut.at(-1)!.text).toBe('cut L/A1 2026-01-15 20:30, 1 fresh');
  });

  test('is a journal without a mistake', () => {
    for (let i = 0; i < 10; i++) {
      const random = randomOf('whole', i);
      const lot = lotOf(random, {
        dishes: [12, 12], soaks: LADDER, untreated: { rho: 0.1, shift: 3, rotting: 0.3, weak: { share: 0.3, kind: 'leggy, then died' } } });
      const text = textOf(diaryOf(random, lot));
      const journal = journalOf(text);
      const book = new ProblemBook(journal);
      book.update({ day: DAY_ZERO + 84, minutes: undefined });
      expect([...book.of('simulated.germ')].map(({ problem }) => problem.code).filter(code => code !== 'no-recent-count'), text).toEqual([]);
    }
  });
});
