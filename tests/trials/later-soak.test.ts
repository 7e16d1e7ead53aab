import { describe, expect, test } from 'vitest';
import { known } from '../measures/helpers.ts';
import { groupText, trial } from './helpers.ts';

/** Two halves watched alike from 2026-01-11; A is soaked on 2026-02-15, five weeks later. */
function halves({ first = '', base = '2026-02-15', soakB = '', resown = ', 15 C', after = true, more = '' } = {}): string {
  return `
    lot L Iris alba, 60 seeds
    split L, A 24 seeds, B 24 seeds
    ${first}
    sow L/A 2026-01-11 19:00, 15 C
    sow L/B 2026-01-11 19:00, 15 C
    count L/A 2026-02-01, 2
    count L/B 2026-02-01, 1
    count L/A 2026-02-15, 1, 1 leggy
    count L/B ${base}, 3, 1 rotted
    soak L/A 2026-02-15 19:00, GA3 500 ppm, 24 h
    ${soakB}
    sow L/A 2026-02-16 20:00${resown}
    ${after ? `count L/A 2026-03-01, 8
    count L/B 2026-03-01, 1` : ''}
    ${more}
  `;
}

describe('seed that was watched and then soaked', () => {
  test('is held against the other half from the day of the soak on, without what had come up or rotted before', () => {
    const { contests, leftOut } = trial(halves());
    expect(contests).toHaveLength(1);
    const [{ comparison, treated, untreated, verdict, remarks }] = contests as [typeof contests[number]];
    expect([treated, untreated!].map(({ batches }) => batches.map(({ batch }) => batch.path))).toEqual([['L/A'], ['L/B']]);
    // 24 less 3 that were up; 24 less 4 that were up and 1 that had rotted.
    expect(known(comparison).germinated).toMatchObject({ treated: { x: 8, n: 21 }, untreated: { x: 1, n: 19 } });
    expect(known(comparison)).toMatchObject({ byDay: 14, open: { treated: 13, untreated: 18 } });
    expect(known(comparison).weak.treated).toMatchObject({ leggy: 0, of: 8 });
    // SciPy 1.17: boschloo_exact([[8, 1], [13, 18]], alternative="greater"): p 0.0088; above 0.005, and seed waits.
    expect(known(comparison).better.germinated.seeds).toBeCloseTo(0.00879, 5);
    expect(verdict.sentence).toContain('by day 14, 8 of 21 treated seeds had germinated (38 %) and 1 of 19 untreated (5 %)');
    expect(remarks[0]).toBe('days count from 2026-02-15, the day of the soak; seed that had germinated or rotted by 2026-02-15 is on neither side');
    expect(leftOut).toEqual([]);
  });

  test('keeps its first part, up to that day, in the comparison that it was in', () => {
    const first = 'soak L/A 2026-01-10 18:00, GA3 250 ppm, 24 h\n    soak L/B 2026-01-10 18:00, water, 24 h';
    const { contests } = trial(halves({ first }));
    const shares = contests.map(({ comparison }) => known(comparison).germinated.treated);
    expect(shares).toEqual([{ x: 3, n: 24 }, { x: 8, n: 21 }]);
    expect(contests.map(({ alsoDiffers }) => alsoDiffers)).toEqual([[], ['earlier soaks']]);
    expect(contests[1]!.verdict.rule).toBe('more-differs');
    expect([contests[1]!.treated, contests[1]!.untreated!].map(groupText)).toEqual(['GA3 500: A', 'untreated: B']);
  });

  test('has only what its first part lay in: a new medium at the second sowing matters from then on', () => {
    const first = 'soak L/A 2026-01-10 18:00, GA3 250 ppm, 24 h\n    soak L/B 2026-01-10 18:00, water, 24 h';
    const source = halves({ first, resown: ', 15 C, in compost' }).replaceAll('19:00, 15 C', '19:00, 15 C, in moss');
    expect(trial(source).contests.map(({ alsoDiffers }) => alsoDiffers)).toEqual([[], ['medium', 'earlier soaks']]);
  });

  test('asks whether the second soak paid where both halves had the first', () => {
    const first = 'soak L/A 2026-01-10 18:00, GA3 250 ppm, 24 h\n    soak L/B 2026-01-10 18:00, GA3 250 ppm, 24 h';
    const { contests } = trial(halves({ first }));
    expect(contests.at(-1)).toMatchObject({ alsoDiffers: [], verdict: { verdict: 'cannot tell', rule: 'still-open' } });
    const { germinated } = known(contests.at(-1)!.comparison);
    expect(germinated).toMatchObject({ treated: { x: 8, n: 21 }, untreated: { x: 1, n: 19 } });
  });

  test('says that the other half was not soaked in water, unless it was', () => {
    expect(trial(halves()).contests[0]!.remarks.join()).toContain('was not soaked in water');
    const { contests: [wet] } = trial(halves({ soakB: 'soak L/B 2026-02-15 19:00, water, 24 h' }));
    expect(wet!.remarks.join()).not.toContain('was not soaked in water');
    const { contests: [next] } = trial(halves({ soakB: 'soak L/B 2026-02-16 08:00, water, 24 h' }));
    expect(next!.remarks.join()).not.toContain('was not soaked in water');
    const first = 'soak L/A 2026-01-10 18:00, water, 24 h\n    soak L/B 2026-01-10 18:00, water, 24 h';
    expect(trial(halves({ first })).contests[0]!.remarks.join()).toContain('was not soaked in water');
  });

  test('leaves out what was lost before, and what was lost since', () => {
    const source = halves({ more: 'discard L/A 2026-03-02' }).replace('1, 1 leggy', '1, 1 leggy, 2 lost').replace('2026-03-01, 8', '2026-03-01, 8, 3 lost');
    const { comparison, treated, untreated } = trial(source).contests[0]!;
    expect(known(comparison).germinated.treated).toEqual({ x: 8, n: 16 });
    expect([treated, untreated!].map(({ batches: [first] }) => first!.course.closed)).toEqual([true, undefined]);
  });

  test('is beside what was looked at a day before or after, and beside nothing else', () => {
    const lookedAt = (base: string) => trial(halves({ base })).contests.length;
    expect(['2026-02-13', '2026-02-14', '2026-02-15'].map(lookedAt)).toEqual([0, 1, 1]);
  });

  test('is beside nothing that was treated from the day before the look to the day after the soak', () => {
    const beside = (soakB: string) => trial(halves({ soakB })).contests.filter(({ treated }) => treated.batches[0]!.batch.path === 'L/A');
    const soaked = (day: string) => beside(`soak L/B ${day} 20:30, KNO3 0.2 %, 1 h`).length;
    expect(['2026-02-13', '2026-02-14', '2026-02-15'].map(soaked)).toEqual([1, 0, 0]);
    const counted = (day: string) => beside(`count L/B ${day}, 0\n    soak L/B ${day} 20:30, KNO3 0.2 %, 1 h`);
    expect(['2026-02-15', '2026-02-16'].map(counted)).toEqual([[], []]);
    const [{ untreated, remarks }] = counted('2026-02-17') as [ReturnType<typeof counted>[number]];
    expect(untreated!.batches).toMatchObject([{ batch: { path: 'L/B' }, course: { checks: [{ day: 0 }, { day: 2 }] } }]);
    expect(remarks).toContain('L/B is compared up to the day on which it was soaked itself');
  });

  test('is looked at up to its next soak, which is a trial of its own, and up to a division of what has not germinated', () => {
    const again = trial(halves({ more: 'soak L/A 2026-03-05 19:00, KNO3 0.2 %, 24 h\n    count L/A 2026-03-20, 5\n    count L/B 2026-03-20, 2' }));
    expect(again.contests.map(({ treated }) => groupText(treated))).toEqual(['GA3 500: A', 'KNO3 2000: A']);
    const shares = again.contests.map(({ comparison }) => known(comparison).germinated.treated);
    expect(shares).toEqual([{ x: 8, n: 21 }, { x: 5, n: 13 }]);
    const divided = trial(halves({ more: 'split L/B 2026-03-02, C 5 seeds\n    count L/A 2026-03-20, 2\n    count L/B 2026-03-20, 2' })).contests[0]!;
    expect(divided.untreated!.batches[0]!.course).toMatchObject({ closed: true, checks: [{ day: 0 }, { day: 14 }] });
    expect(divided.remarks).toContain('L/B is compared up to the day on which seed was split off it');
  });

  test('is no replicate of seed that was soaked in something else or on another day', () => {
    const { contests } = trial(`
      lot L Iris alba, 90 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      ${['A', 'B', 'C', 'D'].map(part => `sow L/${part} 2026-01-11\ncount L/${part} 2026-02-01, 1\nmove L/${part} 2026-02-02, at frame`).join('\n')}
      soak L/A 2026-02-02 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-02-02 19:00, GA3 250 ppm, 24 h
      soak L/C 2026-02-04 19:00, GA3 500 ppm, 24 h
      ${['A', 'B', 'C', 'D'].map(part => `count L/${part} 2026-03-01, 5`).join('\n')}
    `);
    expect(contests.map(({ treated, untreated }) => [groupText(treated), groupText(untreated!)])).toEqual([
      ['GA3 500: A', 'untreated: D'], ['GA3 250: B', 'untreated: D'], ['GA3 500: C', 'untreated: D']]);
  });

  test('is held against no rest of seed that was ahead before the soak: what is left of that is other seed', () => {
    const late = (a: number, b: number) => trial(`
      lot L Iris alba, 60 seeds
      split L, A 24 seeds, B 24 seeds
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      count L/A 2026-02-08, ${a}
      count L/B 2026-02-08, ${b}
      soak L/A 2026-02-08 19:00, GA3 500 ppm, 24 h
      count L/A 2026-02-22, 12
      count L/B 2026-02-22, 0
      discard L/A 2026-06-01
      discard L/B 2026-06-01
    `).contests[0]!;
    expect(late(0, 12)).toMatchObject({
      alsoDiffers: ['the seed (before the soak 0 of 24 had germinated, and 12 of 24 of the untreated)'], verdict: { verdict: 'cannot tell' },
    });
    // SciPy 1.10: fisher_exact([[0, 24], [4, 20]]): p 0.109; [[0, 24], [3, 21]]: p 0.234.
    expect(late(0, 4).alsoDiffers).toHaveLength(1);
    expect(late(0, 3)).toMatchObject({ alsoDiffers: [], verdict: { verdict: 'worth repeating' } });
  });

  test('is of full seed where both rests were cut open', () => {
    const cut = halves({ more: 'cut L/A 2026-04-01, 13 fresh\n    cut L/B 2026-04-01, 18 empty' });
    const { comparison, alsoDiffers } = trial(cut).contests[0]!;
    expect(alsoDiffers).toEqual(['empty seed (0 of 21 against 18 of 19)']);
    // 21 less 8 are cut on the one side, 19 less 1 on the other.
    expect(known(comparison).germinated).toMatchObject({ treated: { x: 8, n: 21 }, untreated: { x: 1, n: 19 } });
  });

  test('names what else changed with it', () => {
    expect(trial(halves({ resown: ', 22 C' })).contests[0]!.alsoDiffers).toEqual(['temperature']);
    expect(trial(halves({ more: 'chill L/A 2026-02-17, 4 C, 7 days' })).contests[0]!.alsoDiffers).toEqual(['warm and cold stages']);
  });

  test('has several dishes soaked on one day as replicates, and all that were left as their counterpart', () => {
    const { contests } = trial(`
      lot L Iris alba, 90 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      sow L/C 2026-01-11
      sow L/D 2026-01-11
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 2
      count L/C 2026-02-01, 0
      count L/D 2026-02-01, 1
      soak L/A 2026-02-02 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-02-02 19:00, GA3 500 ppm, 24 h
      count L/A 2026-03-01, 9
      count L/B 2026-03-01, 8
      count L/C 2026-03-01, 1
      count L/D 2026-03-01, 1
    `);
    expect(known(contests[0]!.comparison)).toMatchObject({
      dishes: { treated: 2, untreated: 2 }, germinated: { treated: { x: 17, n: 37 }, untreated: { x: 2, n: 39 } },
    });
  });

  test('that was divided after it had begun to come up had nothing up on that day, in either half', () => {
    const { contests: [only] } = trial(`
      lot L Iris alba, 48 seeds
      sow L 2026-01-11, 48 seeds
      count L 2026-02-15, 5
      split L 2026-02-15, A 20 seeds, B 20 seeds
      soak L/A 2026-02-15 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-02-15 19:00, water, 24 h
      count L/A 2026-03-01, 14
      count L/B 2026-03-01, 2
    `);
    expect(known(only!.comparison).germinated).toMatchObject({ treated: { x: 14, n: 20 }, untreated: { x: 2, n: 20 } });
    const half = { after: 35, by: 49 };
    expect(known(only!.comparison).halfUp).toEqual({ treated: half, untreated: half });
  });

  test.each([
    ['no other half was looked at when it was soaked', halves({ base: '2026-02-10' }),
      'its soak of 2026-02-15 is not compared: no other batch was counted both on 2026-02-15 and after the soak'],
    ['nobody counted it since', halves({ after: false }), 'its soak of 2026-02-15 is not compared: the batch was not counted after it'],
    ['it was counted on the day before the soak alone', halves({ after: false }).replace('count L/A 2026-02-15, 1, 1 leggy', 'count L/A 2026-02-14, 1'),
      'its soak of 2026-02-15 is not compared: the batch was not counted after it'],
  ])('is listed with the reason where %s', (_, source, reason) => {
    const { contests, leftOut } = trial(source);
    expect(contests).toEqual([]);
    expect(leftOut).toMatchObject([{ batch: { path: 'L/A' }, why: { undefined: reason } }]);
  });

  test('is listed where nobody knows how many seeds there were, and has no counterpart that has an error', () => {
    const { leftOut } = trial('lot L Iris alba\nsow L 2026-01-11\ncount L 2026-02-01, 1\nsoak L 2026-02-02, GA3 500 ppm\ncount L 2026-03-01, 3');
    expect(leftOut.map(({ why }) => why.undefined)).toContain('its soak of 2026-02-02 is not compared: the number of seeds is unknown');
    const unread = (part: string) => trial(halves({ more: `count L/${part} 2026-03-20, 3 x` })).leftOut.map(({ batch, why }) => [batch.path, why.undefined]);
    const error = 'a record of it, or of the seed it was split from, has an error';
    expect(unread('A')).toEqual([['L/A', error]]);
    expect(unread('B')).toContainEqual(['L/A', 'its soak of 2026-02-15 is not compared: no other batch was counted both on 2026-02-15 and after the soak']);
  });
});
