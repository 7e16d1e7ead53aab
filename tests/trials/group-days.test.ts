import { describe, expect, test } from 'vitest';
import type { Group } from '../../server/src/trials/groups.ts';
import { contest, groupTexts, trial, twoBatches } from './helpers.ts';

/** The batches of a group, each with the days of its checks. */
function daysOf({ batches }: Group): unknown[] {
  return batches.map(({ batch, course: { checks } }) => [batch.path, checks.map(({ day }) => day)]);
}

describe('batches of a lot', () => {
  test('that were divided before anything came up are their parts alone, which begin with the looks at the whole', () => {
    const { groups, leftOut } = trial(`
      lot L Iris alba, 40 seeds
      split L, A 20 seeds, B 20 seeds
      sow L/A 2026-01-10
      sow L/B 2026-01-10
      count L/A 2026-01-20, 0, 2 lost
      split L/A 2026-01-21, 1 9 seeds, 2 9 seeds
      count L/A/1 2026-02-20, 3
      count L/A/2 2026-02-20, 4
      count L/B 2026-02-20, 8
    `);
    expect(groups.map(daysOf)).toEqual([[['L/A/1', [10, 41]], ['L/A/2', [10, 41]], ['L/B', [41]]]]);
    expect(leftOut).toEqual([]);
  });

  test('that are rests of two sowings are no replicates of each other, and a count on the day of the split needs no other', () => {
    const { groups } = trial(`
      lot L Iris alba, 40 seeds
      split L, A 20 seeds, B 20 seeds
      sow L/A 2026-01-10
      sow L/B 2026-01-10
      count L/A 2026-01-20, 2
      count L/B 2026-01-20, 2
      split L/A 2026-01-20, 0 5 seeds
      split L/A 2026-01-21, 1 10 seeds
      count L/A/0 2026-02-20, 1
      split L/B 2026-01-21, 1 10 seeds
      count L/A/1 2026-01-21, 0
      count L/A/1 2026-02-20, 3
      count L/B/1 2026-02-20, 4
    `);
    expect(groups.map(daysOf)).toEqual([[['L/A', [10]], ['L/B', [10]]], [['L/A/0', [10, 41]]], [['L/A/1', [11, 41]]], [['L/B/1', [11, 41]]]]);
  });

  test('that were sown and then divided whole, before anybody counted, are their parts alone', () => {
    const { groups, leftOut } = trial(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-10
      split L 2026-01-11, A 10 seeds, B 10 seeds
      count L/A 2026-02-01, 3
      count L/B 2026-02-01, 4
    `);
    expect([groups.map(({ batches }) => batches.map(({ batch }) => batch.path)), leftOut]).toEqual([[['L/A', 'L/B']], []]);
  });

  test('take part by a cut test alone', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 20 seeds
      split L, A 10 seeds, B 10 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      chill L/B 2026-01-10, 4 C, 30 days
      cut L/A 2026-03-01, 10 dead
      cut L/B 2026-03-01, 10 dead
    `))).toEqual(['untreated: B', 'GA3 500: A']);
  });

  test('have stages in the order of their days, whether a regime or a record of each tells them', () => {
    const source = (b: string) => `
      regime short, warm 20 C 30 days
      lot L Iris alba, 40 seeds
      split L, A 20 seeds, B 20 seeds
      sow L/A 2026-01-10, regime short
      sow L/B 2026-01-10
      warm L/B 2026-01-10, 20 C, 30 days
      chill L/A 2026-02-09, 4 C, 60 days
      ${b}
      count L/A 2026-05-01, 3
      count L/B 2026-05-01, 3
    `;
    expect(groupTexts(trial(source('chill L/B 2026-02-09, 4 C, 60 days')))).toEqual(['untreated: A B']);
    expect(groupTexts(trial(source('')))).toEqual(['untreated: A', 'untreated: B']);
  });

  test('that were looked at in the cold and treated before the sowing count their days up to then from the cold', () => {
    const before = (records: string) => {
      const { groups, leftOut } = trial(`lot L Iris alba, 40 seeds\nsplit L, A 20 seeds\n${records}`);
      return [
        ...groups.map(group => [group.treatment.length, ...daysOf(group)]),
        ...leftOut.map(({ why }) => why.undefined),
      ];
    };
    const late = 'soak L/A 2026-02-10 19:00, GA3 500 ppm, 24 h\nsow L/A 2026-02-11 20:00\nchill L/A 2026-02-12, 4 C\ncount L/A 2026-03-01, 9';
    const { groups: [first] } = trial(`lot L Iris alba, 40 seeds\nsplit L, A 20 seeds\nchill L/A 2026-01-10, 4 C\ncount L/A 2026-02-01, 3\n${late}`);
    expect(first!.batches[0]!.conditions).toMatchObject({ isSown: false, sownWithin: 0, stages: [{ what: 'chill', day: 0 }] });
    expect(before(`chill L/A 2026-01-10, 4 C\ncount L/A 2026-02-01, 3\n${late}`)[0]).toEqual([0, ['L/A', [22]]]);
    expect(before(`soak L/A 2026-01-09 08:00, water, 24 h\ncount L/A 2026-02-01, 3\n${late}`)[0]).toEqual([0, ['L/A', [22]]]);
    expect(before(`count L/A 2026-02-01, 3\n${late}`)[0]).toContain('its “count” of 2026-02-01 is dated before anything was done to it: is the date right?');
    expect(before(`count L/A 2026-02-01, 3\n${late.replace('sow L/A 2026-02-11 20:00\n', '')}`)[0]).toContain('its “count” of 2026-02-01 is dated before anything was done to it: is the date right?');
  });

  test('that were counted in the year before, by a slip, are left out with that date', () => {
    const { leftOut: [first] } = trial(twoBatches().replace('count L/A 2026', 'count L/A 2025-02-01, 3\n    count L/A 2026'));
    expect(first!.why.undefined).toBe('its “count” of 2025-02-01 is dated before anything was done to it: is the date right?');
  });

  test('are not said to have shown nothing at a look that nobody took', () => {
    const source = twoBatches().replace('sow L/A 2026-01-11', 'sow L/A 2025-01-11');
    expect(contest(source).verdict.sentence).toMatch(
      /^Cannot tell: by day 30, 5 of 20 untreated seeds had germinated \(25 %\), and the treated seed had not been looked at by then, but the sides also differ in sowing date/);
  });

  test.each([
    ['sown by itself', 'split L, A 20 seeds\nsow L/A 2026-01-10\ncount L/A 2026-02-01, 0'],
    ['sown before it was split off', 'sow L 2026-01-10\nsplit L 2026-01-12, A 20 seeds\ncount L/A 2026-02-01, 0'],
    ['seen to germinate before it was sown', 'split L, A 20 seeds\nchill L/A 2026-01-10, 4 C\ncount L/A 2026-02-01, 2'],
  ])('are untreated up to the soak of seed that was %s', (_, records) => {
    const source = `lot L Iris alba, 100 seeds\n${records}\nsoak L/A 2026-02-02 19:00, GA3 500 ppm, 24 h\nsow L/A 2026-02-03 20:00\ncount L/A 2026-03-01, 9`;
    const own = trial(source).groups.filter(({ batches: [first] }) => first!.batch.path === 'L/A');
    expect(own).toMatchObject([{ treatment: { length: 0 }, batches: [{ course: { checks: { length: 1 } } }] }]);
  });
});
