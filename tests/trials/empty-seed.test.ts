import { describe, expect, test } from 'vitest';
import { contest } from './helpers.ts';

describe('empty seed', () => {
  const journal = (a: string, b: string) => `
    lot L Gentiana lutea, 60 seeds
    split L, A 24 seeds, B 24 seeds
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00, 15 C
    sow L/B 2026-01-11 19:00, 15 C
    count L/A 2026-02-20, 16
    count L/B 2026-02-20, 6
    cut L/A 2026-03-20, ${a}
    cut L/B 2026-03-20, ${b}
  `;

  test('that one side had more of is no effect of the treatment: of full seed 16 of 23 and 6 of 10 germinated', () => {
    expect(contest(journal('7 fresh, 1 empty', '4 fresh, 14 empty'))).toMatchObject({
      alsoDiffers: ['empty seed (1 of 24 against 14 of 24)'],
      verdict: { verdict: 'cannot tell', sentence: expect.stringMatching(/, but the sides also differ in empty seed \(1 of 24 against 14 of 24\)\.$/) },
    });
  });

  test.each([
    ['as much of on both sides', '2 fresh, 6 empty', '12 fresh, 6 empty'],
    ['no more of than chance brings', '7 fresh, 1 empty', '15 fresh, 3 empty'],
    ['not counted, because a cut test does not add up', '7 fresh, 1 empty', '14 empty'],
  ])('that there is %s changes nothing', (_, a, b) => {
    expect(contest(journal(a, b))).toMatchObject({ alsoDiffers: [] });
  });

  test('that changes the difference by less than 10 points changes nothing', () => {
    // 5 of 24 empty against none (p 0.05): 16 of 24 less 6 of 24 is 42 points, 16 of 19 less 6 of 24 is 59.
    expect(contest(journal('3 fresh, 5 empty', '18 fresh')).alsoDiffers).toEqual(['empty seed (5 of 24 against 0 of 24)']);
    const few = journal('3 fresh, 5 empty', '18 fresh').replace('count L/A 2026-02-20, 16', 'count L/A 2026-02-20, 6').replace('3 fresh', '13 fresh');
    expect(contest(few)).toMatchObject({ alsoDiffers: [] });
    // 6 of 24 less 2 of 24 is 17 points, 6 of 19 less 2 of 24 is 23.
    const fewer = few.replace('count L/B 2026-02-20, 6', 'count L/B 2026-02-20, 2').replace('18 fresh', '22 fresh');
    expect(contest(fewer)).toMatchObject({ alsoDiffers: [] });
    // 12 of 24 is 13 points less than 12 of 19, on either side.
    const half = journal('7 fresh, 5 empty', '18 fresh').replace('2026-02-20, 16', '2026-02-20, 12');
    expect(contest(half).alsoDiffers).toEqual(['empty seed (5 of 24 against 0 of 24)']);
    const other = journal('8 fresh', '7 fresh, 5 empty').replace('2026-02-20, 6', '2026-02-20, 12');
    expect(contest(other).alsoDiffers).toEqual(['empty seed (0 of 24 against 5 of 24)']);
  });

  test.each([
    ['all germinated', '24', '0 of 24'], ['the rest rotted', '22, 2 rotted', '0 of 24'], ['the rest was lost', '22, 2 lost', '0 of 22'],
  ])('is none in a dish without a cut test in which %s', (_, counted, empty) => {
    const source = journal('1 fresh', '4 fresh, 14 empty').replace('2026-02-20, 16', `2026-02-20, ${counted}`).replace(/cut L.A.*/, '');
    expect(contest(source)).toMatchObject({ alsoDiffers: [`empty seed (${empty} against 14 of 24)`], verdict: { verdict: 'cannot tell' } });
  });

  test('is not known of a dish without a cut test in which one seed is left', () => {
    const source = journal('1 fresh', '4 fresh, 14 empty').replace('2026-02-20, 16', '2026-02-20, 23').replace(/cut L.A.*/, '');
    expect(contest(source)).toMatchObject({ alsoDiffers: [] });
  });

  test('is none in one of several dishes in which nothing is left', () => {
    const source = `
      lot L Gentiana lutea, 60 seeds
      split L, A 30 seeds, B 30 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      split L/A 2026-01-11 20:00, 1 15 seeds, 2 15 seeds
      sow L/A/1 2026-01-11 20:10, 15 C
      sow L/A/2 2026-01-11 20:10, 15 C
      sow L/B 2026-01-11 20:10, 15 C
      count L/A/1 2026-02-25, 14, 1 rotted
      count L/A/2 2026-02-25, 13
      count L/B 2026-02-25, 15
      cut L/A/2 2026-04-10, 1 dead, 1 empty
      cut L/B 2026-04-10, 15 empty
    `;
    expect(contest(source).alsoDiffers).toEqual(['empty seed (1 of 30 against 15 of 30)']);
  });

  test('is of all seed that was not lost, and what germinated is that of the last count', () => {
    const counts = 'count L/A 2026-02-20, 2\n    count L/A 2026-02-27, 1\n    count L/A 2026-03-06, 11, 2 lost';
    const source = journal('7 fresh, 1 empty', '4 fresh, 14 empty').replace('count L/A 2026-02-20, 16', counts);
    expect(contest(source).alsoDiffers).toEqual(['empty seed (1 of 22 against 14 of 24)']);
    // 12 of 24 is 13 points less than 12 of 19; 4 of 24 would be 4 points less than 4 of 19.
    const slow = journal('7 fresh, 5 empty', '18 fresh').replace('2026-02-20, 16', '2026-02-20, 2\n    count L/A 2026-02-27, 2\n    count L/A 2026-03-06, 8');
    expect(contest(slow).alsoDiffers).toEqual(['empty seed (5 of 24 against 0 of 24)']);
  });
});
