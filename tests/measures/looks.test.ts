import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../server/src/measures/course.ts';
import { cutFaultOf, faultOf, stepsOf } from '../../server/src/measures/course.ts';
import { daysApart, halfOfAllUp, halfUp } from '../../server/src/measures/half-up.ts';
import { lifeTable } from '../../server/src/measures/life-table.ts';
import {
  atLeast, atMost, commonAge, foundAfter, isFinished, lookAfter, openSeeds, until,
} from '../../server/src/measures/looks.ts';
import { medianLimits } from '../../server/src/measures/median.ts';
import { mergeCourses } from '../../server/src/measures/merge.ts';
import { sharedLooks, sharedTables } from '../../server/src/measures/shared-looks.ts';

/** A batch by its looks: the day, and what had germinated by then. */
function looked(sown: number, looks: readonly (readonly [number, number])[], more: Partial<Course> = {}): Course {
  return { sown, checks: looks.map(([day, germinated]) => ({ day, germinated })), ...more };
}

const cut = (fresh: number, hard: number, dead: number) => ({ cut: { fresh, hard, dead, empty: 0 } });

describe('a batch', () => {
  test('is finished where no seed is left that could germinate', () => {
    expect(isFinished(looked(5, [[10, 5]]))).toBe(true);
    expect(isFinished(looked(5, [[10, 4]]))).toBe(false);
    expect(isFinished({ sown: 5, checks: [{ day: 10, germinated: 2, rotted: 2, lost: 1 }] })).toBe(true);
    expect(isFinished(looked(5, [[10, 3]], cut(0, 0, 2)))).toBe(true);
    expect(isFinished(looked(5, [[10, 3]], cut(1, 1, 0)))).toBe(false);
    // The cut test does not add up, and so says nothing.
    expect(isFinished(looked(5, [[10, 3]], cut(0, 0, 1)))).toBe(false);
  });

  test('stays as it is once it is finished, and else is unknown after its last look', () => {
    expect(lookAfter(looked(5, [[10, 5]]), 20)).toBe(10);
    expect(lookAfter(looked(5, [[10, 4]]), 20)).toBeUndefined();
    expect(lookAfter(looked(5, [[10, 4], [20, 4]]), 11)).toBe(20);
    expect(lookAfter(looked(5, [[10, 4], [20, 4]]), 10)).toBe(10);
  });

  test('has no more and no fewer than its looks allow', () => {
    const batch = looked(9, [[10, 1], [20, 4], [20, 5]]);
    expect([9, 10, 19, 20, 30].map(age => [atLeast(batch, 'germinated', age), atMost(batch, 'germinated', age)]))
      .toEqual([[0, 1], [1, 1], [1, 5], [5, 5], [5, 5]]);
    expect(atMost(looked(9, []), 'germinated', 5)).toBe(0);
    expect(foundAfter([batch, looked(9, [[15, 3]]), looked(9, [])], 12)).toBe(4 + 3);
    expect(until(batch, 10).checks).toEqual([{ day: 10, germinated: 1 }]);
  });

  test('has one step a day, however often it was looked at then', () => {
    expect(stepsOf(looked(9, [[4, 1], [6, 2], [6, 5]]))).toEqual([
      { day: 4, since: { value: 0 }, fresh: 1, germinated: 1, gone: 0 },
      { day: 6, since: { value: 4 }, fresh: 4, germinated: 5, gone: 0 },
    ]);
    expect(stepsOf(looked(9, [[0, 1]]))[0]?.since).toHaveProperty('undefined');
  });

  test('has no numbers where more is accounted for than was sown, and none of none', () => {
    expect(faultOf({ sown: 5, checks: [{ day: 8, germinated: 3, lost: 3 }] })).toEqual({ undefined: 'more seeds are accounted for on day 8 than were sown' });
    expect(faultOf({ sown: 5, checks: [{ day: 8, germinated: 2, rotted: 1, lost: 2 }] })).toBeUndefined();
    expect(faultOf(looked(0, [[8, 0]]))).toEqual({ undefined: 'no seeds are left in the count' });
    expect(faultOf(looked(Number.NaN, [[8, 0]]))).toEqual({ undefined: 'the number of seeds sown is unknown' });
    expect(faultOf(looked(5, [[8, 0], [8, 1]]))).toBeUndefined();
    expect(cutFaultOf(looked(5, [[8, 1]], cut(1, 2, 1)))).toBeUndefined();
    expect(cutFaultOf(looked(5, [[8, 1]], cut(1, 2, 2)))).toEqual({ undefined: 'the cut test sorts 5, but 4 had not germinated' });
  });
});

describe('several batches', () => {
  test('share the days on which each was looked at, and those on which one had been finished by then', () => {
    const [done, open] = [looked(5, [[4, 2], [8, 5]]), looked(5, [[4, 0], [6, 1], [8, 2], [10, 2]])];
    expect(sharedLooks([done, open])).toEqual([4, 8, 10]);
    expect(sharedLooks([looked(5, [[4, 2], [8, 4]]), open])).toEqual([4, 8]);
    // What was found on day 6 counts on day 8.
    expect(sharedTables([[open], [looked(5, [[4, 1], [8, 1]])]])).toEqual([
      [{ day: 8, germinated: 2, censored: 3 }],
      [{ day: 4, germinated: 1, censored: 0 }, { day: 8, germinated: 0, censored: 4 }],
    ]);
    expect(sharedTables([[looked(5, [[4, 1]])], [open]])).toHaveProperty('undefined');
  });

  test('were all watched up to the last look of the one watched for the shortest time, finished ones apart', () => {
    const [short, long] = [looked(5, [[20, 1]]), looked(5, [[10, 0], [30, 1]])];
    const [done, late] = [looked(5, [[5, 5]]), looked(5, [[40, 5]])];
    expect(commonAge([long, short])).toBe(20);
    expect(commonAge([done, long])).toBe(30);
    expect(commonAge([done, late])).toBe(40);
  });

  test('have open seed where somebody still counts it', () => {
    const watched = looked(9, [[20, 3]]);
    const ended = looked(9, [[30, 3]], { closed: true });
    expect(openSeeds([[watched], [ended]])).toEqual([6, 0]);
    expect(openSeeds([[looked(9, [[30, 3]])], [ended]])).toEqual([0, 0]);
    expect(openSeeds([[watched, looked(5, [[10, 5]])], [looked(4, [[10, 0]])]])).toEqual([6, 4]);
    // A closed batch that is finished ends nobody's watch.
    expect(openSeeds([[watched], [looked(9, [[10, 9]], { closed: true })]])).toEqual([6, 0]);
  });

  test('have one life table, in the order of the days', () => {
    const untimed = looked(5, [[10, 5]], { untimed: 'no day 0' });
    const other = { sown: 4, checks: [{ day: 20, germinated: 1, lost: 1 }, { day: 30, germinated: 3, lost: 1 }] };
    expect(lifeTable([looked(5, [[10, 1], [30, 2]]), untimed, other])).toEqual([
      { day: 10, germinated: 1, censored: 0 },
      { day: 20, germinated: 1, censored: 1 },
      { day: 30, germinated: 3, censored: 3 },
    ]);
  });

  test('count as one with what was known of each', () => {
    expect(mergeCourses([
      { sown: 5, checks: [{ day: 4, germinated: 2, rotted: 1 }, { day: 12, germinated: 3, rotted: 1, lost: 1 }] },
      { sown: 7, checks: [{ day: 6, germinated: 3, lost: 2 }] },
    ])).toEqual({ sown: 12, checks: [
      { day: 4, germinated: 2, rotted: 1, lost: 0 },
      { day: 6, germinated: 5, rotted: 1, lost: 2 },
      { day: 12, germinated: 6, rotted: 1, lost: 3 },
    ] });
    expect(mergeCourses([looked(5, [[4, 2]]), looked(5, [[4, 2]], { untimed: 'no day 0' })])).toMatchObject({ untimed: 'no day 0', sown: 10 });
  });
});

describe('half of the germinated seed was up', () => {
  test('between the looks that saw it', () => {
    expect(halfUp([looked(9, [[10, 1], [20, 5]])], 20)).toEqual({ after: 10, by: 20 });
    // Of five the third: two by day 10 are one too few.
    expect(halfUp([looked(9, [[10, 2], [20, 5]])], 20)).toEqual({ after: 10, by: 20 });
    expect(halfUp([looked(9, [[10, 3], [20, 5]])], 20)).toEqual({ after: 0, by: 10 });
    expect(halfUp([looked(9, [[0, 3]])], 20)).toEqual({ after: undefined, by: 0 });
    expect(halfUp([looked(9, [[10, 1], [20, 5]])], 10)).toEqual({ after: 0, by: 10 });
  });

  test('by what the looks at all of several batches allow', () => {
    // On day 10 the one may have had its six, with the two of the other: 8 of 14, when the half of it is 7.5.
    expect(halfUp([looked(9, [[30, 6]]), looked(9, [[10, 2], [20, 8]])], 30)).toEqual({ after: 0, by: 20 });
    expect(halfUp([looked(9, [[5, 0], [30, 3]]), looked(9, [[10, 1], [20, 3]])], 30)).toEqual({ after: 5, by: 30 });
  });

  test('or not, for a reason', () => {
    expect(halfUp([looked(9, [[10, 0]])], 20)).toEqual({ undefined: 'nothing germinated' });
    expect(halfUp([looked(9, [[10, 4]])], 5)).toEqual({ undefined: 'nothing germinated' });
    expect(halfUp([looked(9, [[10, 4]]), looked(9, [[10, 4]], { untimed: 'no day 0' })], 20)).toEqual({ undefined: 'no day 0' });
  });

  test('of all seed, what was lost is none', () => {
    const batch = { sown: 9, checks: [{ day: 10, germinated: 3, lost: 1 }, { day: 20, germinated: 4, lost: 1 }] };
    expect(halfOfAllUp([batch], 20)).toEqual({ after: 10, by: 20 });
    expect(halfOfAllUp([batch], 10)).toEqual({ undefined: 'less than half of it germinated' });
    expect(halfOfAllUp([batch], 5)).toEqual({ undefined: 'less than half of it germinated' });
    // On day 10 both may have had two: that is half of eight.
    expect(halfOfAllUp([looked(4, [[10, 2], [30, 2]]), looked(4, [[20, 2]])], 30)).toEqual({ after: 0, by: 20 });
  });

  test('takes in the true day, whenever the seeds came up and somebody looked', () => {
    const days = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 12 });
    const looks = fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { maxLength: 5 })
      .map(some => [...some, 31].sort((a, b) => a - b));
    fc.assert(fc.property(fc.array(fc.tuple(days, looks), { minLength: 1, maxLength: 3 }), dishes => {
      const courses = dishes.map(([up, seen]) => (
        looked(up.length, seen.map(day => [day, up.filter(each => each <= day).length] as const))));
      const all = dishes.flatMap(([up]) => up).sort((a, b) => a - b);
      const half = all[Math.ceil((all.length + 1) / 2) - 1]!;
      const { after, by } = halfUp(courses, 31) as { after: number; by: number };
      expect(after < half && half <= by, `${after} < ${half} <= ${by}`).toBe(true);
    }));
  });

  test('so many days before or after the other, at the least and at the most', () => {
    expect(daysApart({ after: 10, by: 14 }, { after: 20, by: 28 })).toEqual({ least: -18, most: -6 });
    expect(daysApart({ after: undefined, by: 0 }, { after: 20, by: 28 })).toBeUndefined();
    expect(daysApart({ after: 10, by: 14 }, { after: undefined, by: 0 })).toBeUndefined();
  });
});

test('the median of seed like this lies between looks: from the one before the lower limit of Kaplan and Meier on', () => {
  const found = medianLimits(looked(20, [[5, 0], [10, 4], [15, 10], [20, 16], [25, 18]]));
  // By log(-log S) the limits are of S(10) = 0.8 0.551 and 0.920, of S(15) = 0.5 0.271 and 0.692, and of S(20) = 0.2
  // 0.062 and 0.393.
  expect(found).toEqual({ after: 10, by: 20 });
  expect(medianLimits(looked(20, [[10, 1]]))).toEqual({ undefined: 'half of the seed never germinated' });
  expect(medianLimits(looked(20, [[10, 18]], { untimed: 'no day 0' }))).toEqual({ undefined: 'no day 0' });
  expect(medianLimits(looked(20, [[10, 18]]))).toEqual({ after: undefined, by: 10 });
});
