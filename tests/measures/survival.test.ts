import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kaplanMeier } from '../../server/src/measures/kaplan-meier.ts';
import { lifeTable, seedsOf, type LifeTable } from '../../server/src/measures/life-table.ts';
import { logRank } from '../../server/src/measures/log-rank.ts';
import { course, expectClose, FREIREICH, known, valueOf } from './helpers.ts';

const table = (sown: number, fresh: string, end: number) => lifeTable([course(sown, fresh, [end])]);

// Germination-like cases: treated, untreated.
const L1 = { first: table(20, '4:3 6:6 8:5 10:3 14:1', 28), second: table(20, '10:2 14:3 21:2', 28) };
const L3 = { first: table(12, '3:5 5:4 7:3', 21), second: table(12, '5:1 7:2 12:1 19:1', 21) };
const L4 = { first: table(15, '6:3', 40), second: table(15, '', 40) };

describe('the life table', () => {
  test('censors lost and rotted seed on the day it was missed, the rest at the last check', () => {
    const checks = [
      { day: 4, germinated: 2, lost: 1 },
      { day: 6, germinated: 6, lost: 1, rotted: 1 },
      { day: 9, germinated: 6, lost: 1, rotted: 1 },
    ];
    expect(lifeTable([{ sown: 10, checks }])).toEqual([
      { day: 4, germinated: 2, censored: 1 },
      { day: 6, germinated: 4, censored: 1 },
      { day: 9, germinated: 0, censored: 2 },
    ]);
  });

  test('adds up batches day by day', () => {
    expect(lifeTable([course(3, '4:1 6:1'), course(4, '6:2 9:1')])).toEqual([
      { day: 4, germinated: 1, censored: 0 },
      { day: 6, germinated: 3, censored: 1 },
      { day: 9, germinated: 1, censored: 1 },
    ]);
  });

  test('of a batch without counts is empty', () => {
    expect(lifeTable([{ sown: 10, checks: [] }])).toEqual([]);
  });
});

describe('Kaplan-Meier', () => {
  // Freireich et al. 1963; the three decimals are as published, the rest from R 4.2.2, survival 3.5-3.
  const PUBLISHED = [
    [6, 0.857, 0.8571428571, 0.0763603548], [7, 0.807, 0.8067226891, 0.0869352852],
    [10, 0.753, 0.7529411765, 0.0963496530], [13, 0.690, 0.6901960784, 0.1068147078],
    [16, 0.627, 0.6274509804, 0.1140538653], [22, 0.538, 0.5378151261, 0.1282337517],
    [23, 0.448, 0.4481792717, 0.1345914568],
  ] as const;

  test('gives the curve and the standard errors of the remission times', () => {
    const { steps } = kaplanMeier(FREIREICH.treated);
    expect(steps.map(step => step.day)).toEqual(PUBLISHED.map(([day]) => day));
    for (const [i, [, published, s, error]] of PUBLISHED.entries()) {
      expect(steps[i]!.ungerminated).toBeCloseTo(published, 3);
      expect(steps[i]!.ungerminated).toBeCloseTo(s, 10);
      expect(valueOf(steps[i]!.error)).toBeCloseTo(error, 10);
    }
  });

  test('gives their medians, 23 and 8 weeks, with the log-log limits of R', () => {
    expect(kaplanMeier(FREIREICH.treated)).toMatchObject({
      median: { value: 23 }, medianLow: { value: 13 }, medianHigh: { undefined: 'half of the seed never germinated' },
    });
    expect(kaplanMeier(FREIREICH.placebo)).toMatchObject({
      median: { value: 8 }, medianLow: { value: 4 }, medianHigh: { value: 11 },
    });
  });

  test('gives a germination curve (R 4.2.2)', () => {
    const { steps, median } = kaplanMeier(L1.first);
    const wanted = [
      [0.85, 0.0798435971], [0.55, 0.1112429773], [0.3, 0.1024695077], [0.15, 0.0798435971], [0.1, 0.0670820393],
    ];
    for (const [i, [s, error]] of wanted.entries()) {
      expectClose(steps[i]!.ungerminated, s!);
      expect(valueOf(steps[i]!.error)).toBeCloseTo(error!, 10);
    }
    expect(median).toEqual({ value: 8 });
    expect(kaplanMeier(L1.second).median).toEqual({ undefined: 'half of the seed never germinated' });
  });

  test('has no error where no seed is left', () => {
    const last = kaplanMeier(L3.first).steps.at(-1)!;
    expect(last.ungerminated).toBe(0);
    expect(last.error).toEqual({ undefined: 'no seed is left ungerminated' });
    expect(last.interval).toEqual(last.error);
  });

  test('has its median half way to the next step where exactly half is left', () => {
    expect(kaplanMeier(table(10, '7:5 12:1', 20)).median).toEqual({ value: 9.5 });
    expect(kaplanMeier(table(10, '7:5', 20)).median).toEqual({ value: 7 });
  });

  test('without early losses is the share that has not germinated, within its interval', () => {
    const counts = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 9 });
    fc.assert(fc.property(counts, fc.integer({ min: 1, max: 9 }),
      (fresh, more) => {
        const sown = fresh.reduce((a, b) => a + b, 0) + more;
        const whole = course(sown, fresh.map((n, i) => `${3 * i + 3}:${n}`).join(' '));
        for (const { day, ungerminated, interval } of kaplanMeier(lifeTable([whole])).steps) {
          const { germinated } = whole.checks.find(check => check.day === day)!;
          expect(ungerminated).toBeCloseTo(1 - germinated / sown, 12);
          const { low, high } = known(interval);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThan(ungerminated);
          expect(high).toBeGreaterThan(ungerminated);
          expect(high).toBeLessThanOrEqual(1);
        }
      }));
  });
});

describe('the log-rank test', () => {
  const remission = { first: FREIREICH.treated, second: FREIREICH.placebo };

  test('finds 16.79 for the remission times, with 19.3 relapses expected instead of 9', () => {
    const found = known(logRank([remission]));
    expect(found.chiSquare).toBeCloseTo(16.79, 2);
    expect(found.expected).toBeCloseTo(19.3, 1);
    expect(found.observed).toBe(9);
    // 30 relapses, in weeks 1 to 8, 10 to 13, 15 to 17, 22 and 23.
    expect([found.total, found.days]).toEqual([30, 17]);
    // R 4.2.2, survdiff.
    expect(found.chiSquare).toBeCloseTo(16.7929409892, 10);
    expect(found.expected).toBeCloseTo(19.2505009480, 10);
    expect(found.variance).toBeCloseTo(6.2569605737, 10);
    expectClose(found.p, 4.16880910933e-5);
  });

  // R 4.2.2, survival 3.5-3, survdiff.
  test.each([
    ['L1', L1, 18, 7.9915191481, 4.3432610666, 23.0632438225, 1.56758969563e-6],
    ['L3', L3, 12, 5.4135338346, 2.5203125562, 17.2127605526, 3.3418409832e-5],
    ['L4', L4, 3, 1.5, 0.6982758621, 3.22222222222, 0.0726449476895],
  ] as const)('agrees with R on germination: %s', (_, pair, observed, expected, variance, chiSquare, p) => {
    const found = known(logRank([pair]));
    expect(found.observed).toBe(observed);
    expect(found.expected).toBeCloseTo(expected, 10);
    expect(found.variance).toBeCloseTo(variance, 10);
    expect(found.chiSquare).toBeCloseTo(chiSquare, 10);
    expectClose(found.p, p);
  });

  test('stratified adds up what was observed, expected and varied in each stratum', () => {
    const both = known(logRank([L1, L3]));
    const parts = [known(logRank([L1])), known(logRank([L3]))];
    for (const key of ['observed', 'expected', 'variance'] as const) {
      expect(both[key]).toBeCloseTo(parts[0]![key] + parts[1]![key], 12);
    }
    // Days 4, 6, 8, 10, 14 and 21 of the first, 3, 5, 7, 12 and 19 of the second.
    expect([...parts, both].map(({ days }) => days)).toEqual([6, 5, 6]);
  });

  test('is undefined where nothing germinated, or all on both sides at once', () => {
    const none = { first: table(5, '', 9), second: table(5, '', 9) };
    const all = { first: table(5, '4:5', 9), second: table(5, '4:5', 9) };
    for (const pair of [none, all]) {
      expect(logRank([pair])).toEqual({ undefined: 'on no day did both sides have seed that could differ' });
    }
    expect(logRank([])).toHaveProperty('undefined');
  });

  const tables: fc.Arbitrary<LifeTable> = fc.array(fc.record({
    day: fc.integer({ min: 1, max: 12 }),
    germinated: fc.integer({ min: 0, max: 4 }),
    censored: fc.integer({ min: 0, max: 3 }),
  }), { minLength: 1, maxLength: 8 }).map(list => {
    const days = [...new Map(list.map(exit => [exit.day, exit])).values()].sort((a, b) => a.day - b.day);
    return [...days, { day: 20, germinated: 0, censored: 3 }];
  });

  test('does not change with the order of the sides, but for the sign, nor with the scale of time', () => {
    fc.assert(fc.property(tables, tables, (first, second) => {
      const slow = (exits: LifeTable) => exits.map(exit => ({ ...exit, day: exit.day * 7 }));
      const found = logRank([{ first, second }]);
      const swapped = logRank([{ first: second, second: first }]);
      if ('undefined' in found) {
        expect(swapped).toEqual(found);
        return;
      }
      const excess = (test: typeof found) => test.observed - test.expected;
      expect(known(swapped).chiSquare).toBeCloseTo(found.chiSquare, 8);
      expect(excess(known(swapped))).toBeCloseTo(-excess(found), 10);
      expect(logRank([{ first: slow(first), second: slow(second) }])).toEqual(found);
    }));
  });

  test('finds nothing between a sample and itself', () => {
    fc.assert(fc.property(tables, first => {
      const found = logRank([{ first, second: first }]);
      if (!('undefined' in found)) expect(found.chiSquare).toBeCloseTo(0, 12);
      expect(seedsOf(first)).toBeGreaterThan(0);
    }));
  });
});
