import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare } from '../../server/src/measures/comparison.ts';
import { contrast } from '../../server/src/measures/contrast.ts';
import { fisher } from '../../server/src/measures/fisher.ts';
import { mergeCourses } from '../../server/src/measures/merge.ts';
import { t50Coolbear } from '../../server/src/measures/germination-time.ts';
import { sameAge } from '../../server/src/measures/same-age.ts';
import { course, CROWDER, expectClose, known, valueOf } from './helpers.ts';

const treated = course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28]);
const untreated = course(20, '10:2 14:3 21:2', [4, 6, 8, 28]);

describe('a comparison', () => {
  test('has difference, exact test, log-rank test and the gain in days', () => {
    const found = known(compare([treated], [untreated]));
    expect(found.byDay).toBe(28);
    expect(found.germinated.treated).toEqual({ x: 18, n: 20 });
    // R 4.2.2: Wilson limits squared and added; fisher.test; survdiff.
    expect(found.germinated.difference.low).toBeCloseTo(0.2540831339, 10);
    expect(found.germinated.difference.high).toBeCloseTo(0.7335740853, 10);
    expectClose(found.germinated.fisher.twoSided, 0.000771628135366);
    expect(known(found.speed.sown).chiSquare).toBeCloseTo(23.0632438225, 10);
    // T50 6.2 (exact fraction) against 10 + (4 - 2) / 3 * 4.
    expectClose(valueOf(found.t50), 6.2 - 38 / 3);
    expect(found.t50OfSown).toEqual({ undefined: 'untreated: fewer than 50 % of the seed sown germinated' });
  });

  test('shows what a gain was bought with: weak seedlings of those that germinated, sound ones of those sown', () => {
    const weak = course(20, '4:18', [28], { leggy: 4, abnormal: 2, died: 3 });
    const { seedlings, sound } = known(compare([weak], [untreated]));
    expect(known(seedlings.weak)).toMatchObject({ treated: { x: 9, n: 18 }, untreated: { x: 0, n: 7 } });
    expect(known(seedlings.leggy).treated).toEqual({ x: 4, n: 18 });
    expect(known(seedlings.abnormal).treated).toEqual({ x: 2, n: 18 });
    expect(known(seedlings.died).treated).toEqual({ x: 3, n: 18 });
    expect(sound.treated).toEqual({ x: 9, n: 20 });
    expect(sound.untreated).toEqual({ x: 7, n: 20 });
  });

  test('counts a seedling that is called weak for two reasons not more often than it germinated', () => {
    const twice = course(20, '4:3', [28], { leggy: 3, died: 3 });
    expect(known(compare([twice], [untreated])).sound.treated).toEqual({ x: 0, n: 20 });
    const over = known(compare([course(20, '4:3', [28], { leggy: 4 })], [untreated])).seedlings;
    expect(over.leggy).toEqual({ undefined: 'more such seedlings were counted than germinated' });
  });

  test('takes lost seed out of the denominator', () => {
    const lossy = course(20, '4:9', [28], { lost: 5 });
    expect(known(compare([lossy], [untreated])).germinated.treated).toEqual({ x: 9, n: 15 });
  });

  test('has no shares of seedlings where nothing germinated on a side', () => {
    const none = known(compare([treated], [course(20, '', [28])]));
    expect(none.seedlings.weak).toEqual({ undefined: 'nothing germinated on one side' });
    expect(none.t50).toEqual({ undefined: 'untreated: nothing germinated' });
    expect(none.germinated.difference.value).toBe(0.9);
  });

  test('is undefined without a batch on each side, or with a batch that cannot be measured', () => {
    expect(compare([], [untreated])).toEqual({ undefined: 'there is no batch to compare with' });
    expect(compare([treated], [{ sown: 20, checks: [] }])).toEqual({ undefined: 'no counts yet' });
  });

  test('widens its interval and weakens its tests where replicates are overdispersed', () => {
    const plates = (cell: keyof typeof CROWDER) => CROWDER[cell].map(([x, n]) => course(n, `10:${x}`, [20]));
    const found = known(compare(plates('O. aegyptiaca 75, cucumber'), plates('O. aegyptiaca 75, bean')));
    // R 4.2.2: heterogeneity chi-squares of both cells over 5 + 4 degrees of freedom.
    expectClose(found.overdispersion, (8.0282880844 + 9.7595421534) / 9);
    const plain = contrast({ x: 201, n: 295 }, { x: 99, n: 272 });
    expect(found.germinated.treated).toEqual({ x: 201, n: 295 });
    expect(found.germinated.difference.value).toBeCloseTo(plain.difference.value, 12);
    expect(found.germinated.difference.low).toBeLessThan(plain.difference.low);
    expect(found.germinated.difference.high).toBeGreaterThan(plain.difference.high);
    expect(found.germinated.fisher.twoSided).toBeGreaterThan(plain.fisher.twoSided);
    expect(found.germinated.fisher).toEqual(fisher({ x: 102, n: 149 }, { x: 50, n: 138 }));
  });

  test('does not change with the order of replicates, and turns its sign with the sides', () => {
    const batch = fc.integer({ min: 1, max: 15 }).chain(n => fc.record({
      n: fc.constant(n), early: fc.integer({ min: 0, max: n }), late: fc.integer({ min: 0, max: n }),
    })).map(({ n, early, late }) => course(n, `5:${Math.min(early, n)} 9:${Math.min(late, n - early)}`, [20]));
    const side = fc.array(batch, { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(side, side, (a, b) => {
      const found = known(compare(a, b));
      const turned = known(compare([...a].reverse(), [...b].reverse()));
      const swapped = known(compare(b, a));
      expect(turned.germinated.difference.low).toBeCloseTo(found.germinated.difference.low, 9);
      expect(swapped.germinated.difference.low).toBeCloseTo(-found.germinated.difference.high, 9);
      expect(swapped.germinated.fisher.twoSided).toBeCloseTo(found.germinated.fisher.twoSided, 9);
      if ('value' in found.t50) expect(valueOf(swapped.t50)).toBeCloseTo(-found.t50.value, 9);
    }));
  });
});

describe('batches of one age', () => {
  test('are cut back to the check nearest to the last one that all of them had', () => {
    const long = course(9, '10:1 20:4 30:2');
    const short = course(9, '11:2');
    const { day, sides } = sameAge([[long], [short]]);
    expect(day).toBe(11);
    expect(sides[0]![0]!.checks.map(check => check.day)).toEqual([10]);
    expect(sides[1]).toEqual([short]);
  });

  test('are compared by what both had on the day before, when only one was counted today', () => {
    const counted = course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28, 35]);
    expect(known(compare([counted], [untreated])).byDay).toBe(28);
  });

  test('keep a batch that is finished as it is', () => {
    const finished = course(9, '5:9');
    const cut = { ...course(9, '6:5'), cut: { fresh: 0, hard: 0, dead: 2, empty: 2 } };
    const open = course(9, '10:1 20:4 30:2');
    const { day, sides } = sameAge([[finished, cut], [open]]);
    expect(day).toBe(30);
    expect(sides).toEqual([[finished, cut], [open]]);
    expect(sameAge([[finished], [cut]])).toEqual({ day: 6, sides: [[finished], [cut]], open: [0, 0] });
  });

  test.each([{ fresh: 3, hard: 0 }, { fresh: 0, hard: 3 }])('take a batch that was cut open with %j seeds in it as watched up to then', left => {
    const cut = { ...course(9, '6:5', [12]), cut: { ...left, dead: 1, empty: 0 } };
    const long = course(9, '10:1 20:4 30:2');
    const { day, sides } = sameAge([[cut], [long]]);
    expect(day).toBe(12);
    expect(sides[1]![0]!.checks.map(check => check.day)).toEqual([10]);
  });

  test('are open while seed may germinate before the end of a batch that is closed', () => {
    const open = (sown: number, fresh: string, days?: number[]) => ({ ...course(sown, fresh, days), closed: false });
    expect(sameAge([[open(9, '10:2', [20])], [open(9, '10:5', [20])]]).open).toEqual([7, 4]);
    // What comes after the last check of the closed batch changes nothing.
    expect(sameAge([[course(9, '10:2', [20])], [open(9, '10:5', [20])]]).open).toEqual([0, 0]);
    expect(sameAge([[course(9, '10:2', [20])], [open(9, '10:5', [18])]]).open).toEqual([0, 4]);
    expect(sameAge([[course(9, '10:9')], [open(9, '10:5', [20])]]).open).toEqual([0, 4]);
  });

  test('of two equally near checks take the earlier, and all the checks of a day', () => {
    const even = course(9, '10:1 14:4');
    expect(sameAge([[even], [course(9, '12:1')]]).sides[0]![0]!.checks.map(check => check.day)).toEqual([10]);
    const checks = [{ day: 10, germinated: 1 }, { day: 10, germinated: 3 }, { day: 30, germinated: 5 }];
    const twice = { sown: 9, checks };
    expect(sameAge([[twice], [course(9, '12:1')]]).sides[0]![0]!.checks).toHaveLength(2);
  });
});

describe('merged batches', () => {
  test('sum what was known of all on every day', () => {
    const merged = mergeCourses([course(5, '4:2'), course(5, '6:3', [], { rotted: 1 })]);
    expect(merged).toEqual({
      sown: 10,
      checks: [{ day: 4, germinated: 2, rotted: 0, lost: 0 }, { day: 6, germinated: 5, rotted: 1, lost: 0 }],
    });
  });

  test('that are halves of one batch have its T50', () => {
    const halves = [course(10, '4:1 6:3 8:2 10:2', [14, 28]), course(10, '4:2 6:3 8:3 10:1 14:1', [28])];
    expect(valueOf(t50Coolbear(mergeCourses(halves)))).toBe(valueOf(t50Coolbear(treated)));
  });
});
