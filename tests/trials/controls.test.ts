import { describe, expect, test } from 'vitest';
import { contest, trial } from './helpers.ts';

/** A soaked in GA3, B in water, C not at all. */
const journal = (b: string, c: number, sowC = 'sow L/C 2026-01-11, 15 C') => `
  lot L Iris alba, 80 seeds
  split L, A 24 seeds, B 24 seeds, C 24 seeds
  soak L/A 2026-01-10, GA3 500 ppm, 24 h
  soak L/B 2026-01-10, water, 24 h
  sow L/A 2026-01-11, 15 C
  sow L/B 2026-01-11, 15 C
  ${sowC}
  count L/A 2026-02-08, 13
  count L/B 2026-02-08, ${b}
  count L/C 2026-02-08, ${c}
  discard L/A 2026-06-10
  discard L/B 2026-06-10
  discard L/C 2026-06-10
`;

describe('untreated seed of two kinds', () => {
  test('that differs between them shows no benefit beside the worse one', () => {
    expect(contest(journal('3, 14 rotted', 19))).toMatchObject({
      alsoDiffers: ['the untreated seed (of L/B 3 of 24 germinated, of L/C 19 of 24)'],
      verdict: { verdict: 'cannot tell', sentence: expect.stringContaining('but the sides also differ in the untreated seed (of L/B') },
    });
  });

  test('is compared by the one that is most like the treated where no other did better', () => {
    expect(contest(journal('3', 2))).toMatchObject({ alsoDiffers: [], verdict: { verdict: 'worth repeating' } });
    // SciPy 1.10: fisher_exact([[8, 16], [3, 21]], alternative="greater"): p 0.0840; [[9, 15], [3, 21]]: p 0.0467.
    expect(contest(journal('3', 8)).alsoDiffers).toEqual([]);
    expect(contest(journal('3', 9)).alsoDiffers).toHaveLength(1);
  });

  test('is not told apart by seed that lay elsewhere', () => {
    const { contests } = trial(journal('3', 19, 'sow L/C 2026-01-11, 25 C'));
    expect(contests.map(({ alsoDiffers }) => alsoDiffers)).toEqual([[]]);
  });
});
