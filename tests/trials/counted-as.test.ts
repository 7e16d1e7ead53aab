import { describe, expect, test } from 'vitest';
import { evidenceTexts } from '../../server/src/words/trials.ts';
import { contest, trial } from './helpers.ts';

/** Two dishes of 30, each with its own lines of counts. */
const journal = (a: string, b: string) => `
  lot L Iris alba, 60 seeds
  split L, A 30 seeds, B 30 seeds
  soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
  soak L/B 2026-01-10 19:00, water, 24 h
  sow L/A 2026-01-11 19:00
  sow L/B 2026-01-11 19:00
  ${a}
  ${b}
`;
const named = (roots: string, shoots: string) => [
  `what was counted (roots of the ${roots} seed, and of the ${shoots} seed only what emerged: write how many had germinated, too)`,
];
const lines = (batch: string, ...counts: readonly string[]) => (
  counts.map((count, i) => `count L/${batch} 2026-0${i + 2}-10, ${count}`).join('\n  '));

describe('roots of one side beside shoots of the other', () => {
  // As many roots may have been out on both sides on day 30: nobody looked for them in B.
  test('are no sign that the treated seed was faster', () => {
    expect(contest(journal(lines('A', '20', '=20 emerged'), lines('B', '5 emerged', '=18 emerged')))).toMatchObject({
      alsoDiffers: named('treated', 'untreated'),
      verdict: { verdict: 'cannot tell', sentence: expect.stringContaining('but the sides also differ in what was counted (roots of') },
    });
  });

  test('are told without the days that one side would be earlier', () => {
    const days = (b: string) => evidenceTexts(contest(journal(lines('A', '20', '=20 emerged'), b))).join();
    expect(days(lines('B', '5 emerged', '=18 emerged'))).not.toContain('earlier');
    expect(days(lines('B', '5', '13'))).toContain('earlier');
  });

  test.each([
    ['nor that it was harmed', lines('A', '5 emerged', '=6 leaf'), lines('B', '24', '=20 emerged'), named('untreated', 'treated')],
    ['also where nothing had emerged', lines('A', '20'), lines('B', '0 emerged'), named('treated', 'untreated')],
    ['also where one root was written once', lines('A', '16'), lines('B', '1', '4 emerged'), named('treated', 'untreated')],
    ['also after a look that found nothing', lines('A', '20', '1'), lines('B', '0', '3 emerged'), named('treated', 'untreated')],
  ])('%s', (_, a, b, differing) => {
    expect(contest(journal(a, b))).toMatchObject({ alsoDiffers: differing, verdict: { verdict: 'cannot tell' } });
  });

  test.each([
    ['of shoots on both sides', lines('A', '20 emerged'), lines('B', '5 emerged')],
    ['of roots on both sides', lines('A', '20'), lines('B', '5')],
    ['of roots and shoots on both sides', lines('A', '20, 4 emerged'), lines('B', '5, 5 emerged')],
    ['of which one wrote once what was up without its word', lines('A', '20 emerged', '1'), lines('B', '5 emerged', '1 emerged')],
    ['of which one found nothing', lines('A', '20'), lines('B', '0')],
    ['of which one found nothing at all', lines('A', '20'), lines('B', '0, 0 emerged')],
  ])('are not what is told of counts %s', (_, a, b) => {
    expect(contest(journal(a, b))).toMatchObject({ alsoDiffers: [] });
  });

  // Common practice, no source: the first leaf comes weeks after the shoot.
  test('are no less fair than shoots beside first leaves', () => {
    expect(contest(journal(lines('A', '16 emerged'), lines('B', '5 leaf'))).alsoDiffers).toEqual([
      'what was counted (shoots of the treated seed, and of the untreated seed only what had a leaf: write how many had emerged, too)',
    ]);
    expect(contest(journal(lines('A', '16 leaf'), lines('B', '5 leaf'))).alsoDiffers).toEqual([]);
  });

  test('count from the day of a later soak on', () => {
    const { contests } = trial(`
      lot L Iris alba, 60 seeds
      split L, A 30 seeds, B 30 seeds
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      count L/A 2026-02-10, 2
      count L/B 2026-02-10, 2
      soak L/A 2026-02-10 19:00, GA3 500 ppm, 24 h
      count L/A 2026-03-10, 9
      count L/B 2026-03-10, 4 emerged
    `);
    expect(contests.map(({ alsoDiffers }) => alsoDiffers)).toContainEqual(named('treated', 'untreated'));
  });
});
