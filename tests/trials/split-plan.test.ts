import { describe, expect, test } from 'vitest';
import { splitPlan, type SplitPlan } from '../../server/src/trials/split-plan.ts';
import { valueOf } from '../measures/helpers.ts';
import { journalOf } from './helpers.ts';

function planned(source: string): SplitPlan | undefined {
  const journal = journalOf(source);
  const lot = [...journal.lots()][0]!;
  return splitPlan(journal.mentionsOf(lot.id).findLast(({ record }) => record.keyword === 'split')!.record, lot);
}

describe('the plan of a split', () => {
  test('takes the first two parts for the sides as long as nothing was done to them', () => {
    const found = planned('lot L Iris alba, 60 seeds\nsplit L, A 12 seeds, B 12 seeds, C 20 seeds')!;
    expect(found).toMatchObject({ treated: { names: ['A'], seeds: 12 }, untreated: { names: ['B'], seeds: 12 }, isSupposed: true });
    // R 4.2.2: the exact power of fisher.test, 12 against 12, is 0.784 at 40 and 95 %, 0.814 at 40 and 96 %.
    expect(found.plans.map(({ share }) => share)).toEqual([0.1, 0.4, 0.7]);
    expect(valueOf(found.plans[1]!.visible)).toBeGreaterThan(0.95);
    expect(valueOf(found.plans[1]!.visible)).toBeLessThan(0.96);
    expect(found.plans[2]!.visible).toHaveProperty('undefined');
  });

  test('knows the sides where the journal does', () => {
    expect(planned(`
      lot L Iris alba, 60 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds
      soak L/A 2026-01-10 19:00, water, 24 h
      soak L/B 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/C 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/D 2026-01-10 19:00, GA3 250 ppm, 24 h
    `)).toMatchObject({ treated: { names: ['B', 'C'], seeds: 20 }, untreated: { names: ['A'], seeds: 10 }, isSupposed: false });
  });

  test.each([
    ['replicates of treated seed', 'soak L 2026-01-10 19:00, GA3 500 ppm, 24 h\nsplit L 2026-01-11 20:00, A 10 seeds, B 10 seeds'],
    ['replicates of untreated seed', 'split L, A 10 seeds, B 10 seeds\nsow L/A 2026-01-11\nsow L/B 2026-01-11'],
    ['one part', 'split L, A 10 seeds'],
    ['a part without seeds', 'split L, A 10 seeds, B 0 seeds'],
  ])('is none for %s', (_, records) => {
    expect(planned(`lot L Iris alba, 60 seeds\n${records}`)).toBeUndefined();
  });
});
