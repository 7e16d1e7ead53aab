import { describe, expect, test } from 'vitest';
import { splitPlan, tells, type SplitPlan } from '../../server/src/trials/split-plan.ts';
import { valueOf } from '../measures/helpers.ts';
import { journalOf } from './helpers.ts';

function planned(source: string): SplitPlan | undefined {
  const journal = journalOf(source);
  const lot = [...journal.lots()][0]!;
  return splitPlan(journal.mentionsOf(lot.id).findLast(({ record }) => record.keyword === 'split')!.record, lot);
}

test('seed tells nothing without another side, and a dozen on either side tell', () => {
  expect([tells(0, 11), tells(11, 0), tells(1, 1), tells(12, 12)]).toEqual([false, false, false, true]);
});

describe('the plan of a split', () => {
  test('takes the first two parts for the sides as long as nothing was done to them', () => {
    const found = planned('lot L Iris alba, 60 seeds\nsplit L, A 12 seeds, B 12 seeds, C 20 seeds')!;
    expect(found).toMatchObject({ treated: { names: ['A'], seeds: 12 }, untreated: { names: ['B'], seeds: 12 }, isSupposed: true });
    expect(found.plans.map(({ share }) => share)).toEqual([0.1, 0.4, 0.7]);
    expect(valueOf(found.plans[1]!.visible)).toBeCloseTo(0.945, 2);
    expect(found.plans[2]!.visible).toHaveProperty('undefined');
  });

  test('takes an even number of equal parts for the dishes of two sides', () => {
    const found = planned('lot L Iris alba, 60 seeds\nsplit L, A 12 seeds, B 12 seeds, C 12 seeds, D 12 seeds')!;
    expect(found).toMatchObject({ treated: { names: ['A', 'B'], seeds: 24 }, untreated: { names: ['C', 'D'], seeds: 24 }, isSupposed: true });
    expect(found.plans[0]).toMatchObject({ dishes: { treated: 2, untreated: 2 }, treatments: 1, inDishes: undefined });
    const sides = (...sizes: number[]) => {
      const parts = sizes.map((n, i) => `${'ABCDE'[i]!} ${n} seeds`).join(', ');
      const { treated, untreated } = planned(`lot L Iris alba, 60 seeds\nsplit L, ${parts}`)!;
      return `${treated.names.join('')} ${untreated.names.join('')}`;
    };
    expect([sides(6, 7, 6, 7), sides(6, 8, 6, 8), sides(6, 6, 6, 6, 6), sides(6, 6, 6)]).toEqual(['AB CD', 'A B', 'A B', 'A B']);
  });

  test('knows the sides where the journal does', () => {
    expect(planned(`
      lot L Iris alba, 60 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds
      soak L/A 2026-01-10 19:00, water, 24 h
      soak L/B 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/C 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/D 2026-01-10 19:00, GA3 250 ppm, 24 h
    `)).toMatchObject({ treated: { names: ['B', 'C'], seeds: 20 }, untreated: { names: ['A'], seeds: 10 }, isSupposed: false,
      plans: [{ dishes: { treated: 2, untreated: 1 }, treatments: 2 }, {}, {}] });
    expect(planned(`
      lot L Iris alba, 60 seeds
      split L, A 10 seeds, B 10 seeds
      soak L/B 2026-01-09 19:00, water, 12 h
      soak L/B 2026-01-10 19:00, GA3 500 ppm, 24 h
    `)).toMatchObject({ treated: { names: ['B'] }, untreated: { names: ['A'] } });
  });

  test.each([
    ['replicates of treated seed', 'soak L 2026-01-10 19:00, GA3 500 ppm, 24 h\nsplit L 2026-01-11 20:00, A 10 seeds, B 10 seeds'],
    ['replicates of untreated seed', 'split L, A 10 seeds, B 10 seeds\nsow L/A 2026-01-11\nsow L/B 2026-01-11'],
    ['parts of which one was sown', 'split L, A 10 seeds, B 10 seeds\nsow L/B 2026-01-11'],
    ['one part', 'split L, A 10 seeds'],
    ['a part without seeds', 'split L, A 10 seeds, B 0 seeds'],
  ])('is none for %s', (_, records) => {
    expect(planned(`lot L Iris alba, 60 seeds\n${records}`)).toBeUndefined();
  });
});
