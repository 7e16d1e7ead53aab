import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wilson } from '../../server/src/measures/proportion.ts';
import { computedRange } from '../../server/src/measures/range-criterion.ts';
import { pool } from '../../server/src/measures/replicates.ts';
import { publishedRange } from '../../server/src/measures/tolerance-table.ts';
import { CROWDER, expectClose, known } from './helpers.ts';

const hundreds = (...counts: readonly number[]) => counts.map(x => ({ x, n: 100 }));

describe('pooled replicates', () => {
  // Crowder 1978, Table 3; heterogeneity by R 4.2.2, prop.test without correction.
  test.each([
    ['O. aegyptiaca 75, bean', 99, 272, 9.7595421534, 4, 0.0446789302],
    ['O. aegyptiaca 75, cucumber', 201, 295, 8.0282880844, 5, 0.1546834912],
    ['O. aegyptiaca 73, bean', 49, 123, 7.7367268143, 4, 0.1017124482],
    ['O. aegyptiaca 73, cucumber', 75, 141, 6.1265879434, 4, 0.1898919593],
  ] as const)("are as heterogeneous as in Crowder's plates: %s", (cell, x, n, chiSquare, df, p) => {
    const found = pool(CROWDER[cell].map(plate => ({ x: plate[0], n: plate[1] })));
    expect(found).toMatchObject({ x, n });
    const heterogeneity = known(found.heterogeneity);
    expect(heterogeneity.chiSquare).toBeCloseTo(chiSquare, 10);
    expect(heterogeneity.df).toBe(df);
    expect(heterogeneity.p).toBeCloseTo(p, 10);
    expectClose(found.overdispersion, chiSquare / df);
  });

  test('that are overdispersed have a wider interval, that of fewer seeds', () => {
    const found = pool(CROWDER['O. aegyptiaca 75, bean'].map(([x, n]) => ({ x, n })));
    const plain = wilson(found.x, found.n);
    expect(found.effective.n).toBeCloseTo(272 / 2.4398855383, 6);
    expect(found.interval).toEqual(wilson(found.effective.x, found.effective.n));
    const widening = (found.interval.high - found.interval.low) / (plain.high - plain.low);
    // Nearly sqrt(X2 / df) = 1.562.
    expect(widening).toBeGreaterThan(1.5);
    expect(widening).toBeLessThan(1.57);
  });

  test('that agree better than by chance are pooled as one sample', () => {
    const found = pool(hundreds(99, 100, 98, 99));
    expect(known(found.heterogeneity).chiSquare).toBeCloseTo(2.02020202, 8);
    expect(found.overdispersion).toBe(1);
    expect(found.interval).toEqual(wilson(396, 400));
  });

  // Heterogeneity by R 4.2.2.
  test.each([
    [[84, 88, 91, 81], 10, 14, true, 4.81727575, 0.18567661],
    [[96, 88, 85, 79], 17, 13, false, 13.26259947, 0.00410180],
    [[99, 100, 98, 99], 2, 5, true, 2.02020202, 0.56822431],
  ] as const)('of 4 times 100 seeds are held against the table of 7 CFR 201.55: %j', (counts, range, tolerated, passed, x2, p) => {
    const found = pool(hundreds(...counts));
    expect(found.range).toEqual({ range, tolerated, basis: 'published', passed });
    expect(known(found.heterogeneity).chiSquare).toBeCloseTo(x2, 8);
    expect(known(found.heterogeneity).p).toBeCloseTo(p, 8);
  });

  test('of other sizes, or where the table has no row, have a computed range that says so', () => {
    expect(pool([20, 23, 24, 23].map(x => ({ x, n: 25 }))).range).toEqual({
      range: 16, tolerated: 24, basis: 'computed', passed: true,
    });
    expect(pool(hundreds(50, 55, 45, 50)).range).toMatchObject({ basis: 'computed' });
    expect(pool(hundreds(98, 98)).range).toMatchObject({ basis: 'computed' });
    expect(pool(hundreds(90, 80, 85)).range).toMatchObject({ basis: 'computed' });
  });

  test('of unequal sizes, or a single one, have no range', () => {
    expect(pool([{ x: 5, n: 10 }, { x: 5, n: 12 }]).range).toEqual({ undefined: 'the replicates are not of one size' });
    const single = pool([{ x: 5, n: 10 }]);
    expect(single.range).toEqual({ undefined: 'there is only one replicate' });
    expect(single.heterogeneity).toEqual({ undefined: 'there is only one replicate' });
    expect(single.interval).toEqual(wilson(5, 10));
  });

  test('in which none germinated have no heterogeneity', () => {
    expect(pool([{ x: 0, n: 10 }, { x: 0, n: 10 }]).heterogeneity).toEqual({ undefined: 'none germinated in every replicate' });
    expect(pool([{ x: 4, n: 4 }, { x: 9, n: 9 }]).heterogeneity).toEqual({ undefined: 'all germinated in every replicate' });
  });

  test('do not depend on their order, and an interval of them holds the share', () => {
    const share = fc.integer({ min: 1, max: 100 }).chain(n => (
      fc.record({ x: fc.integer({ min: 0, max: n }), n: fc.constant(n) })));
    fc.assert(fc.property(fc.array(share, { minLength: 1, maxLength: 6 }), shares => {
      const found = pool(shares);
      const turned = pool([...shares].reverse());
      expect(turned.overdispersion).toBeCloseTo(found.overdispersion, 9);
      expect(found.overdispersion).toBeGreaterThanOrEqual(1);
      expect(found.interval.low).toBeLessThanOrEqual(found.x / found.n + 1e-12);
      expect(found.interval.high).toBeGreaterThanOrEqual(found.x / found.n - 1e-12);
      expect(found.interval.low).toBeGreaterThanOrEqual(0);
      expect(found.interval.high).toBeLessThanOrEqual(1);
    }));
  });
});

describe('the published table of ranges', () => {
  test('has one row for an average and its mirror to 101', () => {
    for (let average = 71; average <= 99; average++) {
      expect(publishedRange(4, average)).toBe(publishedRange(4, 101 - average));
      expect(publishedRange(2, average)).toBe(publishedRange(2, 101 - average));
    }
    expect(publishedRange(4, 86)).toBe(14);
    expect(publishedRange(4, 71)).toBe(18);
    expect(publishedRange(2, 97)).toBe(6);
    expect(publishedRange(2, 75)).toBe(14);
  });

  test('gives nothing for rows that could not be read, for averages without a row and other numbers of replicates', () => {
    for (let average = 31; average <= 70; average++) expect(publishedRange(4, average)).toBeUndefined();
    for (const average of [0, 1, 100]) expect(publishedRange(4, average)).toBeUndefined();
    expect(publishedRange(2, 99)).toBeUndefined();
    expect(publishedRange(3, 90)).toBeUndefined();
  });

  test('rounds an average to whole percent', () => {
    expect(publishedRange(4, 96.5)).toBe(7);
    expect(publishedRange(4, 96.4)).toBe(8);
  });
});

describe('the computed range', () => {
  // SciPy 1.10.1, binom.cdf: the smallest range exceeded with a probability of at most 0.025.
  const MEANS = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.92, 0.95, 0.98];

  test.each([[25, [10, 10, 9, 9, 8, 7, 6, 5, 4, 3]], [50, [14, 14, 13, 12, 11, 10, 8, 8, 6, 4]]])(
    'of 4 times %i seeds agrees with SciPy', (size, wanted) => {
      expect(MEANS.map(mean => computedRange(4, size, mean))).toEqual(wanted);
    });

  test('of 4 times a million seeds agrees with SciPy too', () => {
    expect(computedRange(4, 1_000_000, 0.3)).toBe(1826);
  });

  test('differs from the published table in 5 of the 29 averages, so the table is stored', () => {
    const averages = Array.from({ length: 29 }, (_, i) => 71 + i);
    const differing = averages.filter(average => computedRange(4, 100, average / 100) !== publishedRange(4, average));
    expect(differing).toEqual([73, 81, 84, 94, 99]);
    // Of two replicates, computed and published.
    const two = averages.map(average => [average, computedRange(2, 100, average / 100), publishedRange(2, average)]);
    expect(two.filter(([, computed, published]) => computed !== published)).toEqual([
      [76, 14, 13], [84, 12, 11], [90, 10, 9], [97, 5, 6], [98, 4, undefined], [99, 3, undefined],
    ]);
  });

  test('is 0 where all or none germinate', () => {
    expect(computedRange(4, 25, 0)).toBe(0);
    expect(computedRange(4, 25, 1)).toBe(0);
  });
});
