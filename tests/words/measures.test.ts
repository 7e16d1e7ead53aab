import { describe, expect, test } from 'vitest';
import { measureRows } from '../../server/src/words/measures.ts';
import { measureBatch } from '../../server/src/measures/batch.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { course, COURSES } from '../measures/helpers.ts';

const rows = (found: Course) => Object.fromEntries(
  measureRows(measureBatch(found)).map(({ name, value, note }) => [name, `${value} | ${note}`]));

describe('the measures of a batch in words', () => {
  test('say which T50 it is, and between which checks it was passed', () => {
    // T50 6.2 and mean 7 as exact fractions.
    expect(rows(COURSES.D5)).toMatchObject({
      'T50': 'day 6 to 8 | half of the germinated seed, (G + 1) / 2 (Coolbear)',
      'half of the seed': 'day 6 to 8 | half of the seed sown less lost; for seed like this day 4 to 10 (95 % interval, Kaplan-Meier)',
      'first seed': 'before day 4 | the first germinated seed',
    });
  });

  test('give the mean time with its bounds, because counts tell only between which checks seed germinated', () => {
    // (3 * 4 + 6 * 6 + 5 * 8 + 3 * 10 + 14) / 18 = 7.33; by the checks before (6 * 4 + 5 * 6 + 3 * 8 + 10) / 18 = 4.89.
    expect(rows(COURSES.D5)['mean time']).toBe('4 to 8 days | the seed found at a check germinated after the check before');
    expect(rows(course(9, '-3:2 4:2'))['mean time']).toMatch(/^up to 1 day \| .*; no check before the first germination$/);
  });

  test('name shares of full and viable seed where there was a cut test', () => {
    const cut = { ...course(30, '8:4 12:8', [40], { lost: 2, rotted: 6 }), cut: { fresh: 2, hard: 0, dead: 3, empty: 5 } };
    expect(rows(cut)).toMatchObject({
      'of full seed': expect.stringMatching(/^12 of 23 = 52\.2 % \| .*empty; 95 % Wilson interval/),
      'of viable seed': expect.stringMatching(/^12 of 20 = 60 % \| /),
    });
    expect(rows({ ...cut, cut: { ...cut.cut, fresh: 4 } })['of full seed']).toBe('– | the cut test sorts 12, but 10 had not germinated');
    expect(Object.keys(rows(COURSES.D5))).not.toContain('of full seed');
  });

  test('show seedlings as shares of the germinated seed, and a dash with the reason for what cannot be given', () => {
    const found = rows(course(20, '8:8', [30], { emerged: 6, leggy: 2 }));
    expect(found.leggy).toMatch(/^2 of 8 = 25 % \| of the germinated seed; /);
    expect(found['half of the seed']).toBe('– | fewer than 50 % of the seed sown germinated');
    expect(Object.keys(found)).not.toContain('died');
    expect(rows(course(20, '', [30]))).toEqual({ T50: '– | nothing germinated' });
  });

  test('tell the wait from the root to the first leaf with its bounds', () => {
    const checks = [
      { day: 20, germinated: 0 }, { day: 30, germinated: 2 }, { day: 90, germinated: 2 },
      { day: 100, germinated: 2, leaf: 1 },
    ];
    expect(rows({ sown: 5, checks })['root to leaf']).toBe('60 to 80 days | of 1 with a first leaf, 1 still without');
  });
});
