import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare } from '../../server/src/measures/comparison.ts';
import { evidenceOf } from '../../server/src/measures/evidence.ts';
import { rankTest } from '../../server/src/measures/rank-test.ts';
import { newcombe } from '../../server/src/measures/difference.ts';
import { daysApart, halfUp } from '../../server/src/measures/half-up.ts';
import { openSeeds } from '../../server/src/measures/looks.ts';
import { mergeCourses } from '../../server/src/measures/merge.ts';
import { t50Coolbear } from '../../server/src/measures/germination-time.ts';
import { course, CROWDER, expectClose, known, valueOf } from './helpers.ts';

const treated = course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28]);
const untreated = course(20, '10:2 14:3 21:2', [4, 6, 8, 28]);

describe('a comparison', () => {
  test('has difference, exact test and the limits of the gain in days', () => {
    const found = known(compare([treated], [untreated]));
    expect(found.byDay).toBe(28);
    expect(found.germinated.treated).toEqual({ x: 18, n: 20 });
    // R 4.2.2: Wilson limits squared and added; fisher.test; survdiff.
    expect(found.germinated.difference.low).toBeCloseTo(0.2540831339, 10);
    expect(found.germinated.difference.high).toBeCloseTo(0.7335740853, 10);
    expectClose(found.germinated.fisher.twoSided, 0.000771628135366);
    expect(found.halfUp).toEqual({ treated: { after: 6, by: 8 }, untreated: { after: 10, by: 14 } });
    expect(found.daysApart).toEqual({ least: -8, most: -2 });
    expect(found.untreatedHalf).toEqual({ undefined: 'less than half of it germinated' });
  });

  test('shows what a gain was bought with: weak seedlings of those that germinated, sound ones of those sown', () => {
    const weak = course(20, '4:18', [28], { leggy: 4, abnormal: 2, died: 3 });
    const { weak: seedlings, sound } = known(compare([weak], [untreated]));
    // Of 18, 4 are leggy, 2 abnormal and 3 dead: 9 where these are different ones, 4 where the others were leggy
    // before.
    expect(seedlings.treated).toEqual({ least: 4, most: 9, of: 18, leggy: 4, abnormal: 2, died: 3 });
    expect(seedlings.untreated).toEqual({ least: 0, most: 0, of: 7, leggy: 0, abnormal: 0, died: 0 });
    expect(sound.treated).toEqual({ x: 14, n: 20 });
    expect(sound.untreated).toEqual({ x: 7, n: 20 });
  });

  test('counts a leggy seedling that died as one weak seedling, and none more often than it germinated', () => {
    const twice = course(20, '4:3', [28], { leggy: 3, died: 3 });
    expect(known(compare([twice], [untreated])).weak.treated).toMatchObject({ least: 3, most: 3, of: 3 });
  });

  test('has days where germinated seed was found at two looks, a single seed at one of them', () => {
    // Up by day 5, by day 9, and never, of either side; the ranks are those of rankTest.
    const [first, second] = [course(12, '5:6 9:3'), course(12, '9:1', [5])];
    const { ahead, sooner } = known(compare([first], [second])).better;
    const up = [{ first: 6, second: 0 }, { first: 3, second: 1 }];
    expect(known(ahead).seeds).toBe(rankTest([...up, { first: 3, second: 11 }]).p);
    expect(known(sooner).seeds).toBe(rankTest(up).p);
    const single = known(compare([course(12, '5:1 9:1')], [course(12, '9:4', [5])])).better.sooner;
    expect(known(single).seeds).toBe(rankTest([{ first: 1, second: 0 }, { first: 1, second: 4 }]).p);
    const one = known(compare([course(12, '5:6', [9])], [course(12, '5:2', [9])])).better;
    for (const found of [one.ahead, one.sooner]) {
      expect(found).toEqual({ undefined: 'all the germinated seed was found between the same two looks' });
    }
    expect(known(compare([course(12, '5:6')], [course(12, '5:2')])).better.ahead)
      .toEqual({ undefined: 'both sides were looked at only once by the same age' });
  });

  test('has as much room for sound seed as it goes along with what germinated', () => {
    const found = (leggy: number) => known(compare([course(20, '4:16', [28], { leggy })], [untreated])).worse.correlations.sound;
    // 23 of 40 germinated, 15 of 40 sound: the odds of these over those of the others, 15 / 25 * 17 / 23.
    expect(found(8)).toBeCloseTo(Math.sqrt((15 / 25) * (17 / 23)), 12);
    expect(found(0)).toBeCloseTo(1, 12);
    // All germinated and are sound, so that there is nothing to go along with.
    const whole = course(20, '4:20', [28]);
    expect(known(compare([whole], [whole])).worse).toMatchObject({ correlations: { sound: 0 }, p: 1 });
  });

  test('makes room for other treatments only where it is told of them', () => {
    const found = known(compare([untreated], [treated]));
    const evidence = evidenceOf(found);
    expect([evidence.betterP, evidence.worseP]).toEqual([found.better.p, found.worse.p]);
    const beside = evidenceOf(found, { better: 3, worse: 3, treatments: 3 });
    expect([beside.betterP, beside.worseP]).toEqual([1, 3 * found.worse.p]);
    expect(evidenceOf(known(compare([treated], [untreated])), { better: 3, worse: 3, treatments: 3 }).worseP).toBe(1);
  });

  test('takes lost seed out of the denominator', () => {
    const lossy = course(20, '4:9', [28], { lost: 5 });
    expect(known(compare([lossy], [untreated])).germinated.treated).toEqual({ x: 9, n: 15 });
  });

  test('is undefined without a batch on each side, or with a batch that cannot be measured', () => {
    expect(compare([], [untreated])).toEqual({ undefined: 'there is no batch to compare with' });
    expect(compare([treated], [{ sown: 20, checks: [] }])).toEqual({ undefined: 'no counts yet' });
  });

  test('widens its interval and weakens its tests where dishes differ', () => {
    const plates = (cell: keyof typeof CROWDER) => CROWDER[cell].map(([x, n]) => course(n, `10:${x}`, [20]));
    const found = known(compare(plates('O. aegyptiaca 75, cucumber'), plates('O. aegyptiaca 75, bean')));
    // R 4.2.2: heterogeneity chi-squares of both cells over 5 + 4 degrees of freedom.
    expectClose(found.better.germinated.spread.factor, (8.0282880844 + 9.7595421534) / 9);
    const plain = newcombe({ x: 201, n: 295 }, { x: 99, n: 272 });
    expect(found.germinated.treated).toEqual({ x: 201, n: 295 });
    expect(found.germinated.difference.value).toBeCloseTo(plain.value, 12);
    expect(found.germinated.difference.low).toBeLessThan(plain.low);
    expect(found.germinated.difference.high).toBeGreaterThan(plain.high);
    expect(found.better.germinated.p).toBeGreaterThan(found.better.germinated.seeds);
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
      expect(swapped.better.germinated.p).toBeCloseTo(found.worse.germinated.p, 9);
    }));
  });
});

describe('the days of a comparison', () => {
  test('are the last ones on which both sides were looked at', () => {
    const counted = course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28, 35]);
    expect(known(compare([counted], [untreated])).byDay).toBe(28);
  });

  test('are those of each side where they were looked at on different days, and the limits hold for both', () => {
    const found = known(compare([course(50, '7:2 21:20 35:10')], [course(50, '14:10 28:12 42:10')]));
    // Treated up to day 35 beside untreated up to day 42; untreated up to day 28 beside treated up to day 35.
    expect(found.better.looks).toEqual({ first: { from: 35, to: 35 }, second: { from: 42, to: 42 } });
    expect(found.worse.looks).toEqual({ first: { from: 28, to: 28 }, second: { from: 35, to: 35 } });
    expectClose(found.germinated.difference.low, newcombe({ x: 32, n: 50 }, { x: 32, n: 50 }).low);
    expectClose(found.germinated.difference.high, newcombe({ x: 32, n: 50 }, { x: 22, n: 50 }).high);
  });

  test('leave a finished batch as it is', () => {
    const finished = course(9, '5:9');
    const cut = { ...course(9, '6:5'), cut: { fresh: 0, hard: 0, dead: 2, empty: 2 } };
    const found = known(compare([finished, cut], [course(9, '10:1 20:4 30:2')]));
    expect(found.better.ages.final).toBe(30);
    expect(found.germinated.treated).toEqual({ x: 14, n: 18 });
  });

  test.each([{ fresh: 3, hard: 0 }, { fresh: 0, hard: 3 }])('end with a batch that was cut open with %j seeds in it', left => {
    const cut = { ...course(9, '6:5', [12]), cut: { ...left, dead: 1, empty: 0 } };
    const found = known(compare([cut], [course(9, '10:1 20:4 30:2')]));
    expect(found.worse.looks).toEqual({ first: { from: 10, to: 10 }, second: { from: 12, to: 12 } });
    expect(found.better.looks).toEqual({ first: { from: 12, to: 12 }, second: { from: 20, to: 20 } });
  });

  test('leave seeds open that may germinate before the end of a batch that is closed', () => {
    const open = (sown: number, fresh: string, days?: number[]) => ({ ...course(sown, fresh, days), closed: false });
    expect(openSeeds([[open(9, '10:2', [20])], [open(9, '10:5', [20])]])).toEqual([7, 4]);
    // What comes after the last look at the closed batch changes nothing.
    expect(openSeeds([[course(9, '10:2', [20])], [open(9, '10:5', [20])]])).toEqual([0, 0]);
    expect(openSeeds([[course(9, '10:2', [20])], [open(9, '10:5', [18])]])).toEqual([0, 4]);
    expect(openSeeds([[course(9, '10:9')], [open(9, '10:5', [20])]])).toEqual([0, 4]);
  });
});

describe('when half was up', () => {
  test('is known between two looks only', () => {
    expect(halfUp([course(20, '35:4 42:6 49:6', [5, 20])], 60)).toEqual({ after: 35, by: 42 });
    expect(halfUp([course(20, '86:4')], 90)).toEqual({ after: 0, by: 86 });
    expect(halfUp([course(20, '', [86])], 90)).toEqual({ undefined: 'nothing germinated' });
  });

  test('is known of several batches as far as all of them tell', () => {
    const pair = [course(10, '10:2 20:6'), course(10, '15:2 25:6')];
    // 16 in all, seed 8.5: by day 20 at least 8 + 2; on day 10 at most 2 + 2, on day 15 at most 8 + 2.
    expect(halfUp(pair, 30)).toEqual({ after: 10, by: 20 });
  });

  test('tells how many days the sides lie apart at the least and at the most', () => {
    expect(daysApart({ after: 7, by: 14 }, { after: 28, by: 35 })).toEqual({ least: -28, most: -14 });
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
