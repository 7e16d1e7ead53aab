/** Journals on which a verdict was confidently wrong once. */
import { describe, expect, test } from 'vitest';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { contest, journalOf, trial } from './helpers.ts';

/** Two batches of 30 that were soaked and sown alike, treated and untreated; `seeds` a side. */
const half = (seeds: number, ...more: readonly string[]) => `
  lot L Adonis vernalis, 80 seeds
  split L, A ${seeds} seeds, B ${seeds} seeds
  soak L/A 2026-01-10, GA3 500 ppm, 24 h
  soak L/B 2026-01-10, water, 24 h
  sow L/A 2026-01-11, 15 C
  sow L/B 2026-01-11, 15 C
  ${more.join('\n  ')}
`;
const verdictOf = (seeds: number, ...more: readonly string[]) => contest(half(seeds, ...more)).verdict;

describe('weak seedlings of seed of which next to none germinates untreated', () => {
  const dead = [
    'count L/A 2026-02-25, 20', 'count L/B 2026-02-25, 1', 'count L/A 2026-03-30, 20 died', 'count L/B 2026-03-30, 0',
    'cut L/A 2026-04-10, 4 dead', 'cut L/B 2026-04-10, 23 fresh',
  ];

  test('are a price, though no test of so few can show it', () => {
    expect(verdictOf(24, ...dead)).toMatchObject({
      verdict: 'cannot tell', rule: 'more-but-weak', evidence: { weaker: true, sounder: false },
      sentence: expect.stringContaining('but 20 of 20 treated seedlings are weak (leggy, abnormal or dead) and 0 of 1 untreated.'),
    });
    expect(verdictOf(24, 'count L/A 2026-02-25, 20, 18 leggy', 'count L/B 2026-02-25, 2', 'cut L/A 2026-04-10, 4 dead',
      'cut L/B 2026-04-10, 22 fresh').verdict).toBe('cannot tell');
    // None of none: the dead seedlings are still there.
    expect(verdictOf(24, 'count L/A 2026-02-25, 20, 20 died', 'count L/B 2026-02-25, 0', 'cut L/A 2026-04-10, 4 dead',
      'cut L/B 2026-04-10, 24 fresh').verdict).toBe('cannot tell');
  });

  test('are one over several lots', () => {
    const source = ['K', 'M'].map(id => half(24, ...dead).replaceAll('L/', `${id}/`).replaceAll(' L', ` ${id}`)).join('');
    const [agent] = plantTrial('Adonis vernalis', [...journalOf(source).lots()], Infinity).agents;
    expect(agent!.across).toMatchObject({ lots: 2, verdict: 'cannot tell', rule: 'at-a-price-in-lots' });
  });

  test('are none where a fifth of the seedlings is weak', () => {
    expect(verdictOf(24, 'count L/A 2026-02-25, 20, 4 leggy', 'count L/B 2026-02-25, 1', 'cut L/A 2026-04-10, 4 dead',
      'cut L/B 2026-04-10, 23 dead')).toMatchObject({ verdict: 'worth repeating', evidence: { weaker: false } });
  });
});

describe('a trial that ended before anything came up', () => {
  const poured = ['count L/A 2026-01-25, 0', 'count L/B 2026-01-25, 0', 'discard L/A 2026-01-26, poured together with B', 'discard L/B 2026-01-26, poured together with A'];

  test('shows no lack of a benefit', () => {
    expect(verdictOf(30, ...poured)).toMatchObject({
      verdict: 'cannot tell', rule: 'too-soon',
      sentence: expect.stringMatching(/^Cannot tell: by day 14, 0 of 30 .* 0 of 30 untreated \(0 %\), which is too few to tell: living seed was left, and it was not watched for long enough\./),
    });
  });

  // In two weeks, with 56 living seeds left, a few on both sides show as little.
  test('shows none where few germinated in its first weeks', () => {
    const few = poured.map(line => line.replace('25, 0', '25, 2'));
    expect(verdictOf(30, ...few)).toMatchObject({ verdict: 'cannot tell', rule: 'too-soon' });
    expect(verdictOf(30, ...few.map(line => line.replace('25, 2', '25, 15')))).toMatchObject({ verdict: 'no sign of a benefit' });
  });

  test.each([
    ['where all that was left was found dead', ['count L/A 2026-01-25, 0', 'count L/B 2026-01-25, 0', 'cut L/A 2026-01-26, 30 dead', 'cut L/B 2026-01-26, 30 dead']],
    ['where it was watched for half a year', poured.map(line => line.replace('2026-01-25', '2026-07-10').replace('2026-01-26', '2026-07-11'))],
    ['where seed germinated on both sides in four weeks', poured.map(line => line.replace('01-25, 0', '02-08, 2').replace('01-26', '02-09'))],
  ])('does so %s', (_, more) => {
    expect(verdictOf(30, ...more)).toMatchObject({ verdict: 'no sign of a benefit', rule: 'nothing-seen' });
  });

  test('shows none of a soak that was given up for a stronger one', () => {
    const { contests } = trial(half(30, 'count L/A 2026-02-25, 1', 'count L/B 2026-02-25, 1', 'soak L/A 2026-02-25 19:00, GA3 500 ppm, 24 h',
      'count L/A 2026-03-12, 0', 'count L/B 2026-03-12, 0', 'soak L/A 2026-03-12 19:00, GA3 1000 ppm, 24 h', 'count L/A 2026-04-20, 20', 'count L/B 2026-04-20, 1')
      .replace('soak L/A 2026-01-10, GA3 500 ppm', 'soak L/A 2026-01-10, water'));
    expect(contests.map(({ verdict: { verdict } }) => verdict)).toEqual(['cannot tell', 'cannot tell']);
    expect(contests[0]!.verdict.rule).toBe('too-soon');
  });
});

describe('seedlings that left before those of the other side died', () => {
  const given = [
    'count L/A 2026-02-10, 28', 'count L/B 2026-02-10, 20', 'cut L/A 2026-03-01, 2 dead', 'cut L/B 2026-03-01, 10 dead',
    'give L/B 2026-03-02, to the garden club', 'pot L/A 2026-03-02, 28 seedlings',
  ];

  test('do not count as sound ever after', () => {
    expect(verdictOf(30, ...given, 'count L/A 2026-08-10, 22 died').verdict).toBe('cannot tell');
  });

  test('count while both sides were looked at', () => {
    const leggy = given.map(line => line.replace('A 2026-02-10, 28', 'A 2026-02-10, 28, 25 leggy'));
    expect(verdictOf(30, ...leggy, 'count L/A 2026-08-10, 22 died')).toMatchObject({
      verdict: 'harmful', rule: 'fewer-sound', sentence: expect.stringMatching(/by day 49, 3 of 30 treated seeds had given sound seedlings .* 20 of 30 untreated/),
    });
  });
});

describe('seedlings that die after the day of judging', () => {
  const judged = [
    'judge L 2026-01-10, on day 60', 'count L/A 2026-01-25, 2', 'count L/B 2026-01-25, 2', 'count L/A 2026-03-12, 23', 'count L/B 2026-03-12, 9',
  ];

  test('take the praise back', () => {
    expect(verdictOf(30, ...judged).verdict).toBe('worth repeating');
    expect(verdictOf(30, ...judged, 'count L/A 2026-04-12, 25 died')).toMatchObject({
      verdict: 'cannot tell', rule: 'more-but-weak',
      sentence: expect.stringMatching(/but by the last looks, 25 of 25 treated seedlings are weak .* later counts of what germinated do not change it/),
    });
  });
});

describe('seedlings that die after a later soak', () => {
  const later = (died: string) => trial(half(30, 'count L/A 2026-02-10, 5', 'count L/B 2026-02-10, 6', 'soak L/A 2026-02-10 19:00, GA3 500 ppm, 24 h',
    'soak L/B 2026-02-10 19:00, water, 24 h', 'count L/A 2026-03-10, 20', 'count L/B 2026-03-10, 1', died, 'discard L/A 2026-04-01', 'discard L/B 2026-04-01')
    .replace('soak L/A 2026-01-10, GA3 500 ppm', 'soak L/A 2026-01-10, water')).contests[0]!.verdict;

  test('count as far as they cannot be older ones', () => {
    expect(later('count L/A 2026-03-25, 20 died')).toMatchObject({
      verdict: 'cannot tell', sentence: expect.stringContaining('15 of 20 treated seedlings are weak'),
    });
    expect(later('count L/A 2026-03-25, 5 died').verdict).toBe('worth repeating');
  });
});

test('empty seed is too few to tell', () => {
  expect(verdictOf(30, 'count L/A 2026-02-10, 1', 'count L/B 2026-02-10, 2', 'cut L/A 2026-04-01, 1 dead, 28 empty', 'cut L/B 2026-04-01, 1 dead, 27 empty'))
    .toMatchObject({ verdict: 'cannot tell', rule: 'too-few', sentence: expect.stringContaining('Fewer than 4 full seeds a side are too few to tell.') });
});

describe('seed that was lost after the first germinated', () => {
  test('does not come up well by leaving', () => {
    const found = verdictOf(30, 'count L/A 2026-01-25, 20', 'count L/B 2026-01-25, 4, 24 lost', 'count L/A 2026-02-08, 3', 'count L/B 2026-02-08, 2', 'cut L/A 2026-03-01, 7 dead', 'cut L/B 2026-03-01, 0 dead');
    expect(found.verdict).toBe('cannot tell');
  });

  test('is not told as germinated, and the difference is that of the numbers beside it', () => {
    const { sentence } = verdictOf(30, 'count L/A 2026-01-25, 1', 'count L/B 2026-01-25, 12, 12 lost', 'count L/A 2026-02-08, 20', 'count L/B 2026-02-08, 2',
      'cut L/A 2026-03-01, 9 dead', 'cut L/B 2026-03-01, 4 dead');
    expect(sentence).toMatch(/21 of 30 treated seeds had germinated \(70 %\) and 14 of 18 untreated \(78 %\): 8 points fewer/);
  });
});

describe('looks that lie apart', () => {
  test('are not said to have ended where they did not', () => {
    const { sentence } = verdictOf(30, 'count L/A 2026-01-25, 0', 'count L/B 2026-01-25, 0', 'count L/A 2026-02-24, 24', 'count L/B 2026-05-14, 3',
      'discard L/A 2026-05-15', 'discard L/B 2026-05-15');
    expect(sentence).toContain('24 more treated seeds germinated after that, and the looks at the two sides lie too far apart to compare.');
  });

  test('are named where they may be the difference', () => {
    const { verdict, sentence } = verdictOf(30, 'count L/B 2026-02-01, 1', 'count L/A 2026-02-01, 2', 'count L/B 2026-02-08, 2', 'count L/A 2026-02-09, 26');
    expect(verdict).toBe('cannot tell');
    expect(sentence).toContain('By the last looks, 28 of 30 treated seeds had germinated and 3 of 30 untreated, but they were not on the same day: look at both sides on one day.');
  });

  test('do not hide that the treated seed was ahead', () => {
    expect(verdictOf(30, 'count L/A 2026-02-01, 25', 'count L/B 2026-02-01, 5', 'count L/A 2026-03-01, 0', 'plant L/A 2026-03-01', 'count L/B 2026-03-01, 15',
      'count L/B 2026-04-01, 5', 'discard L/B 2026-04-02')).toMatchObject({
      verdict: 'worth repeating', rule: 'ahead', sentence: expect.stringContaining('the treated seed was ahead: by day 21, 25 of 30 treated seeds had germinated and 5 of 30 untreated'),
    });
    // More of the treated lasts, whatever was ahead before.
    expect(verdictOf(30, 'count L/A 2026-01-25, 0', 'count L/B 2026-01-25, 10', 'count L/A 2026-02-25, 26', 'cut L/B 2026-02-26, 20 dead')
      .rule).not.toBe('overtaken');
  });
});

describe('dead seedlings of both sides', () => {
  test('leave nothing to praise', () => {
    expect(verdictOf(30, 'count L/A 2026-02-25, 20', 'count L/B 2026-02-25, 1', 'count L/A 2026-03-30, 20 died', 'count L/B 2026-03-30, 1 died',
      'cut L/A 2026-04-10, 10 dead', 'cut L/B 2026-04-10, 29 fresh')).toMatchObject({ verdict: 'cannot tell', rule: 'more-but-weak' });
  });

  test('of the untreated side leave nothing to blame the treatment for', () => {
    const dead = (a: number, b: number) => verdictOf(30, `count L/A 2026-02-01, ${a}`, `count L/B 2026-02-01, ${b}`, 'count L/A 2026-03-01, 0',
      `count L/B 2026-03-01, ${b} died`, `cut L/A 2026-04-01, ${30 - a} dead`, `cut L/B 2026-04-01, ${30 - b} dead`);
    expect(dead(12, 27)).toMatchObject({
      verdict: 'cannot tell', rule: 'fewer-but-sound',
      sentence: expect.stringContaining(', but 0 of 12 treated seedlings are weak (leggy, abnormal or dead) and 27 of 27 untreated.'),
    });
    expect(dead(27, 26)).toMatchObject({ verdict: 'cannot tell', rule: 'fewer-but-sound' });
  });

  test('are told of several lots', () => {
    const one = (id: string, died: number) => half(30, 'count L/A 2026-02-25, 25', 'count L/B 2026-02-25, 3', `count L/A 2026-03-30, ${died} died`,
      'count L/B 2026-03-30, 0', 'discard L/A 2026-07-10', 'discard L/B 2026-07-10').replaceAll('L/', `${id}/`).replaceAll(' L', ` ${id}`);
    const across = (died: number) => plantTrial('Adonis vernalis', [...journalOf(one('K', 0) + one('M', died)).lots()], Infinity).agents[0]!.across;
    expect(across(0).sentence).not.toContain('price');
    expect(across(24).sentence).toMatch(/^Worth repeating: .* It comes at a price: 24 of 50 treated seedlings are weak \(leggy, abnormal or dead\) and 0 of 6 untreated\.$/);
  });
});

test('seedlings that were given away are not looked at by a count of the seed that stayed', () => {
  expect(verdictOf(30, 'count L/A 2026-02-10, 20', 'count L/B 2026-02-10, 20', 'give L/B 2026-02-11, 20 seedlings, to the club',
    'count L/A 2026-04-10, 0, 18 died', 'count L/B 2026-04-10, 0', 'discard L/A 2026-07-01', 'discard L/B 2026-07-01').verdict).not.toBe('harmful');
});

test('a few deaths after the day of judging are a price where the rest is clearly more', () => {
  expect(verdictOf(30, 'judge L 2026-01-10, on day 60', 'count L/A 2026-02-25, 24', 'count L/B 2026-02-25, 3', 'count L/A 2026-03-12, 0',
    'count L/B 2026-03-12, 0', 'count L/A 2026-06-12, 6 died', 'count L/B 2026-06-12, 0')).toMatchObject({
    verdict: 'worth repeating', sentence: expect.stringContaining('It comes at a price: by the last looks, 6 of 24 treated seedlings are weak'),
  });
});

test('a lead over the days that did not last is told as such', () => {
  expect(verdictOf(30, 'count L/A 2026-01-20, 20', 'count L/B 2026-01-20, 1', 'count L/A 2026-02-20, 0', 'count L/B 2026-02-20, 19',
    'count L/B 2026-04-20, 9', 'discard L/A 2026-04-21', 'discard L/B 2026-04-21').sentence).toMatch(
    /^Cannot tell: by day 9, 20 of 30 treated seeds had germinated and 1 of 30 untreated, but that does not show by the last looks any more: 20 of 30 treated seeds had germinated \(67 %\) and 29 of 30 untreated \(97 %\)\./);
});
