import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lifeTable } from '../../server/src/measures/life-table.ts';
import { logRank } from '../../server/src/measures/log-rank.ts';
import { sharedTables } from '../../server/src/measures/shared-checks.ts';
import { speedPairs, speedTests } from '../../server/src/measures/speed-test.ts';
import { course, daily, expectClose, known } from './helpers.ts';

const testsOf = (treated: ReturnType<typeof course>, untreated: ReturnType<typeof course>) => (
  speedTests([speedPairs([treated], [untreated])]));

describe('tables on shared days of check', () => {
  test('keep the days of batches that were checked together', () => {
    const a = course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28]);
    const b = course(20, '10:2 14:3 21:2', [4, 6, 8, 28]);
    expect(sharedTables([[a], [b]])).toEqual([lifeTable([a]), lifeTable([b])]);
  });

  test('count seed on the day by which both sides had been checked', () => {
    expect(sharedTables([[course(5, '4:2 6:1 8:1')], [course(5, '8:4')]])).toEqual([
      [{ day: 8, germinated: 4, censored: 1 }], [{ day: 8, germinated: 4, censored: 1 }],
    ]);
  });

  test('take checks a day apart together', () => {
    const [first, second] = sharedTables([[course(9, '7:2 14:3 21:1')], [course(9, '6:1 13:4 20:1')]]);
    expect(first!.map(exit => exit.day)).toEqual([7, 14, 21]);
    expect(second!.map(exit => exit.day)).toEqual([7, 14, 21]);
  });

  test('do not wait for a batch after its last check', () => {
    const [first] = sharedTables([[course(9, '7:2 14:3 21:1', [28])], [course(9, '7:9')]]);
    expect(first!.map(exit => exit.day)).toEqual([7, 14, 21, 28]);
  });
});

describe('the tests of speed', () => {
  test('see a gain of weeks among the germinated where the test of the sown hardly does', () => {
    const found = testsOf(course(20, '5:6 10:6', [40, 50, 60]), course(20, '40:6 50:6', [5, 10, 60]));
    expect(known(found.sown).p).toBeGreaterThan(0.2);
    expect(known(found.germinated).p).toBeLessThan(0.001);
    expect(known(found.combined)).toEqual({ p: 2 * known(found.germinated).p, faster: true, ofGerminated: true });
  });

  test('find nothing where one side was only checked more often', () => {
    const often = course(20, '2:3 5:4 7:2 9:3 12:1 14:1', daily(28));
    const weekly = course(20, '7:9 14:5', [21, 28]);
    expect(known(logRank([{ first: lifeTable([often]), second: lifeTable([weekly]) }])).p).toBeLessThan(1);
    for (const one of [testsOf(often, weekly).sown, testsOf(often, weekly).germinated]) {
      expect(known(one).chiSquare).toBeCloseTo(0, 12);
    }
  });

  test('find nothing late in a side that was only watched for longer', () => {
    const long = course(20, '7:6 14:4 35:3 42:4', [28]);
    const short = course(20, '7:6 14:4');
    expect(known(testsOf(long, short).germinated).chiSquare).toBeCloseTo(0, 12);
  });

  test('have the log-rank test of the sown that R gives', () => {
    // R 4.2.2, survival 3.5-3, survdiff.
    const found = testsOf(course(12, '3:5 5:4 7:3', [12, 19, 21]), course(12, '5:1 7:2 12:1 19:1', [3, 21]));
    expect(known(found.sown).chiSquare).toBeCloseTo(17.2127605526, 10);
    expectClose(known(found.sown).p, 3.3418409832e-5);
  });

  test('are divided by the overdispersion of replicates', () => {
    const pairs = speedPairs([course(20, '5:9', [10])], [course(20, '10:8', [5])]);
    const plain = known(speedTests([pairs]).sown);
    expectClose(known(speedTests([pairs], 2).sown).chiSquare, plain.chiSquare / 2);
    expect(known(speedTests([pairs], 2).sown).p).toBeGreaterThan(plain.p);
  });

  test('are undefined where there is nothing to compare', () => {
    const nothing = testsOf(course(5, '', [9]), course(5, '', [9]));
    expect(nothing.sown).toEqual({ undefined: 'no day had seed of both sides that could differ' });
    expect(nothing.combined).toEqual({ undefined: 'too few germinated to compare the days' });
  });

  test('find nothing in a single seed, however unlikely its side', () => {
    const found = testsOf(course(5, '5:1', [9]), course(28, '', [5, 9]));
    expect(known(found.sown).p).toBeLessThan(0.05);
    expect(found.combined).toEqual({ undefined: 'too few germinated to compare the days' });
  });

  test('turn with the sides', () => {
    const batch = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 4, maxLength: 4 })
      .map(fresh => course(20, fresh.map((n, i) => `${5 * i + 5}:${n}`).join(' ')));
    fc.assert(fc.property(batch, batch, (a, b) => {
      const { combined } = testsOf(a, b);
      const { combined: turned } = testsOf(b, a);
      if ('undefined' in combined) expect(turned).toEqual(combined);
      else expect(known(turned).p).toBeCloseTo(combined.p, 9);
    }));
  });
});
