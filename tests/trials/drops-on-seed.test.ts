import { describe, expect, test } from 'vitest';
import { readyBefore } from '../../server/src/trials/ready.ts';
import { contest, groupTexts, lotOf, trial } from './helpers.ts';
import { problemsIn } from '../checks/marked.ts';

const wetted = 'the “apply” of 2026-01-12 can have reached seed that had not germinated, so the seed is not untreated, and '
  + 'how long it was in the liquid is unknown';

/** A soaked in GA3 beside B, to which so much was given. */
const beside = (...records: string[]) => [
  'lot L Iris alba, 60 seeds', 'split L, A 24 seeds, B 24 seeds',
  'soak L/A 2026-01-10, GA3 1000 ppm, 24 h', 'soak L/B 2026-01-10, water, 24 h',
  'sow L/A 2026-01-11, 15 C', 'sow L/B 2026-01-11, 15 C',
  'count L/A 2026-01-25, 5', 'count L/A 2026-02-08, 3', ...records, 'discard L/A 2026-06-10', 'discard L/B 2026-06-10',
].join('\n');

const counted = ['count L/B 2026-01-25, 12', 'count L/B 2026-02-08, 7'];

describe('drops of an agent', () => {
  test.each([
    ['so many mL on a dish before anything was up', 'apply L/B 2026-01-12, GA3 250 ppm, 5 mL'],
    ['drops on seed that was not up', 'apply L/B 2026-01-12, GA3 250 ppm, 2 drops'],
    ['drops on more seedlings than the next count has', 'apply L/B 2026-01-12, GA3 250 ppm, 2 drops, 13 seedlings'],
    ['drops on the rest before it was divided', 'apply L 2026-01-12, GA3 250 ppm, 5 mL'],
  ])('are a treatment of the seed: %s', (_, record) => {
    const divided = record.startsWith('apply L ')
      ? beside(record, ...counted).replace('split L, A 24 seeds, B 24 seeds', 'split L, A 24 seeds\nsplit L 2026-01-13, B 24 seeds')
        .replace('soak L/B 2026-01-10, water, 24 h\n', '').replace('sow L/B 2026-01-11', 'sow L/B 2026-01-13')
      : beside(record, ...counted);
    const { contests: [found], leftOut } = trial(divided);
    expect(leftOut.map(({ batch, why }) => [batch.path, why.undefined])).toEqual([['L/B', wetted]]);
    expect([found!.untreated, found!.verdict.verdict]).toEqual([undefined, 'cannot tell']);
  });

  test('end the part of a batch that was watched, where they can have reached what was not up', () => {
    const found = contest(beside(counted[0]!, 'apply L/B 2026-01-26, GA3 250 ppm, 5 mL', counted[1]!));
    expect(found.remarks).toContain('L/B is compared up to the day on which drops can have reached its seed');
    expect(found.verdict.sentence).toContain('5 of 24 treated seeds had germinated (21 %) and 12 of 24 untreated');
    const zero = contest(beside('count L/B 2026-01-25, 0', 'apply L/B 2026-01-26, GA3 250 ppm, 2 drops', 'count L/B 2026-02-08, 19'));
    expect(zero.verdict.sentence).toContain('0 of 24 untreated');
  });

  test.each([
    ['on so many seedlings', counted[0]!, 'apply L/B 2026-01-26, GA3 250 ppm, 5 mL, 12 seedlings'],
    ['on each of some', counted[0]!, 'apply L/B 2026-01-26, GA3 250 ppm, 2 drops'],
    ['on those that are stuck', `${counted[0]!}, 4 stuck`, 'apply L/B 2026-01-26, GA3 250 ppm, 1 mL'],
    ['where no seed is left', `${counted[0]!}, 12 rotted`, 'apply L/B 2026-01-26, GA3 250 ppm, 1 mL'],
    ['of water', 'apply L/B 2026-01-12, water, 5 mL', counted[0]!],
    ['on seedlings that the next count has', 'apply L/B 2026-01-24, GA3 250 ppm, 2 drops, 12 seedlings', counted[0]!],
  ])('on seedlings are none: %s', (_, first, second) => {
    const more = first.includes('rotted') ? [] : [counted[1]!];
    expect(groupTexts(trial(beside(first, second, ...more)))).toEqual(['untreated: B', 'GA3 1000: A']);
    expect(contest(beside(first, second, ...more)).remarks.join()).not.toContain('compared up to');
  });

  test('on seed are no record of untreated seed that came up readily', () => {
    const readily = (record: string) => `
      lot L Iris alba, 60 seeds
      split L, A 24 seeds
      sow L/A 2026-01-11, 15 C
      ${record}
      count L/A 2026-02-08, 20
      soak L 2026-03-01, GA3 500 ppm, 24 h
    `;
    const isCited = (source: string) => readyBefore([lotOf(source)], Infinity) !== undefined;
    const source = readily('apply L/A 2026-01-11, GA3 500 ppm, 5 mL');
    expect([isCited(readily('')), isCited(source)]).toEqual([true, false]);
    const codes = (text: string) => (['ready-untreated', 'nothing-held-back', 'no-control'] as const)
      .flatMap(code => problemsIn(code, text).map(() => code));
    expect([codes(readily('')), codes(source)]).toEqual([['ready-untreated'], ['nothing-held-back']]);
    expect(codes(source.replace('soak L', 'note L'))).toEqual(['no-control']);
  });

  test('leave seed out of what a later soak is compared with', () => {
    const later = (drops: string) => trial(beside('count L/B 2026-01-25, 2', 'count L/B 2026-02-08, 4')
      .replace('soak L/A 2026-01-10, GA3 1000 ppm', 'soak L/A 2026-01-10, water')
      .replace('discard L/A', `${drops}\nsoak L/A 2026-02-09, GA3 500 ppm, 24 h\ncount L/A 2026-03-01, 8\ncount L/B 2026-03-01, 1\ndiscard L/A`));
    expect(later('').contests).toHaveLength(1);
    const { contests, leftOut } = later('apply L/B 2026-01-12, GA3 250 ppm, 5 mL');
    expect([contests.length, leftOut.map(({ batch }) => batch.path)]).toEqual([0, ['L/B', 'L/A']]);
  });

  test('that no agent of the journal is named by are taken for one', () => {
    const { leftOut } = trial(beside('apply L/B 2026-01-12, kelp 5 ppm, 5 mL', ...counted));
    expect(leftOut.map(({ batch }) => batch.path)).toEqual(['L/B']);
  });
});
