import { describe, expect, test } from 'vitest';
import { measureBatch } from '../../server/src/measures/batch.ts';
import { course, known } from './helpers.ts';

describe('the measures of one batch', () => {
  test('name what germination is a share of', () => {
    const cut = { ...course(30, '8:4 12:8', [40], { lost: 2, rotted: 6 }), cut: { fresh: 2, hard: 0, dead: 3, empty: 5 } };
    const { germination, rotted } = measureBatch(cut);
    expect(known(germination.sown)).toMatchObject({ x: 12, n: 28 });
    expect(known(germination.full)).toMatchObject({ x: 12, n: 23 });
    expect(known(germination.viable)).toMatchObject({ x: 12, n: 20, value: 0.6 });
    expect(known(rotted)).toMatchObject({ x: 6, n: 28 });
  });

  test('have no full and viable seed without a cut test', () => {
    const { germination } = measureBatch(course(30, '8:4'));
    expect(germination.full).toEqual({ undefined: 'there was no cut test' });
    expect(germination.viable).toEqual({ undefined: 'there was no cut test' });
    expect(measureBatch({ ...course(4, '', [9]), cut: { fresh: 0, hard: 0, dead: 0, empty: 4 } }).germination.full)
      .toEqual({ undefined: 'there are no seeds to take a percentage of' });
  });

  test('take seedlings as shares of the germinated seed', () => {
    const { seedlings } = measureBatch(course(20, '8:10', [30], { emerged: 10, leaf: 6, leggy: 2, abnormal: 1, died: 3 }));
    expect(Object.entries(seedlings).map(([what, share]) => [what, known(share).x, known(share).n])).toEqual([
      ['emerged', 10, 10], ['leaf', 6, 10], ['leggy', 2, 10], ['abnormal', 1, 10], ['died', 3, 10],
    ]);
  });

  test('show nothing germinated as 0 % with its upper limit, and no times', () => {
    const none = measureBatch(course(20, '', [30]));
    expect(known(none.germination.sown)).toMatchObject({ value: 0, wilson: { low: 0 } });
    // Newcombe 1998: 0 of 20 has the upper limit 0.1611.
    expect(known(none.germination.sown).wilson.high).toBeCloseTo(0.1611, 4);
    for (const time of [none.span, none.t50Coolbear, none.ofSown.t50, none.meanTime.mean, none.seedlings.leggy]) {
      expect(time).toEqual({ undefined: 'nothing germinated' });
    }
    expect(known(none.kaplanMeier).steps).toEqual([]);
  });

  test('give no share above 1 where more seedlings were counted than germinated', () => {
    expect(measureBatch(course(20, '8:2', [30], { leggy: 3 })).seedlings.leggy)
      .toEqual({ undefined: 'more seedlings were counted as leggy than as germinated' });
  });
});
