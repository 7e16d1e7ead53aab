import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clopperPearson, proportion, wilson } from '../../server/src/measures/proportion.ts';
import { expectClose } from './helpers.ts';

// Newcombe 1998, Stat Med 17:857-872, four decimals: Wilson and Clopper-Pearson.
const NEWCOMBE: readonly (readonly number[])[] = [
  [81, 263, 0.2553, 0.3662, 0.2527, 0.3676],
  [15, 148, 0.0624, 0.1605, 0.0578, 0.1617],
  [0, 20, 0, 0.1611, 0, 0.1684],
  [1, 29, 0.0061, 0.1718, 0.0009, 0.1776],
];

// R 4.2.2: prop.test(x, n, correct = FALSE) and binom.test(x, n); five rows also with SciPy 1.10.1.
const R: readonly (readonly number[])[] = [
  [81, 263, 0.2552885199, 0.3662095770, 0.2527367456, 0.3676219226],
  [15, 148, 0.0623863995, 0.1604872417, 0.0578440101, 0.1616504903],
  [0, 5, 0, 0.4344824648, 0, 0.5218237501],
  [0, 10, 0, 0.2775327999, 0, 0.3084971078],
  [0, 20, 0, 0.1611251581, 0, 0.1684334710],
  [1, 12, 0.0148650944, 0.3538799111, 0.0021075932, 0.3847961652],
  [1, 29, 0.0061132143, 0.1717552188, 0.0008726469, 0.1776442955],
  [3, 10, 0.1077912674, 0.6032218525, 0.0667395112, 0.6524528501],
  [10, 10, 0.7224672001, 1, 0.6915028922, 1],
  [17, 20, 0.6395811353, 0.9476312541, 0.6210731735, 0.9679290628],
  [23, 25, 0.7503389105, 0.9777795987, 0.7396941579, 0.9901604100],
  [50, 100, 0.4038315304, 0.5961684696, 0.3983211295, 0.6016788705],
  [333, 400, 0.7927798983, 0.8658944259, 0.7922245707, 0.8677683189],
  [394, 400, 0.9676653664, 0.9931077081, 0.9676387055, 0.9944758905],
];

describe('intervals of a share', () => {
  test.each(NEWCOMBE)('are those that Newcombe published for %i of %i', (x, n, low, high, exactLow, exactHigh) => {
    expect(wilson(x, n).low).toBeCloseTo(low, 4);
    expect(wilson(x, n).high).toBeCloseTo(high, 4);
    expect(clopperPearson(x, n).low).toBeCloseTo(exactLow, 4);
    expect(clopperPearson(x, n).high).toBeCloseTo(exactHigh, 4);
  });

  test.each(R)('agree with R to ten decimals for %i of %i', (x, n, low, high, exactLow, exactHigh) => {
    expect(wilson(x, n).low).toBeCloseTo(low, 10);
    expect(wilson(x, n).high).toBeCloseTo(high, 10);
    expect(clopperPearson(x, n).low).toBeCloseTo(exactLow, 10);
    expect(clopperPearson(x, n).high).toBeCloseTo(exactHigh, 10);
  });

  test('of no seed in 20 have the exact upper limit 1 - 0.025^(1/20)', () => {
    expectClose(clopperPearson(0, 20).high, 1 - 0.025 ** (1 / 20));
  });

  test('know nothing when there are no seeds', () => {
    expect(wilson(0, 0)).toEqual({ low: 0, high: 1 });
    expect(proportion(0, 0)).toEqual({ undefined: 'there are no seeds to take a percentage of' });
  });

  const counts = fc.integer({ min: 1, max: 500 }).chain(n => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

  test.each([['Wilson', wilson], ['Clopper-Pearson', clopperPearson]] as const)(
    '(%s) hold the share, stay within 0 and 1, and mirror with it', (_, interval) => {
      fc.assert(fc.property(counts, ([x, n]) => {
        const { low, high } = interval(x, n);
        const mirrored = interval(n - x, n);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(x / n);
        expect(high).toBeGreaterThanOrEqual(x / n);
        expect(mirrored.low).toBeCloseTo(1 - high, 10);
        expect(mirrored.high).toBeCloseTo(1 - low, 10);
      }));
    });

  test('become narrower with more seeds and wider with more confidence', () => {
    fc.assert(fc.property(counts, ([x, n]) => {
      const width = ({ low, high }: { low: number; high: number }) => high - low;
      expect(width(wilson(2 * x, 2 * n))).toBeLessThan(width(wilson(x, n)));
      expect(width(wilson(x, n, 0.99))).toBeGreaterThan(width(wilson(x, n)));
    }));
  });

  test('(Clopper-Pearson) of 12 seeds cover every true share at least 95 times in 100', () => {
    for (let p = 0.01; p < 1; p += 0.01) {
      let covered = 0;
      let chance = (1 - p) ** 12;
      for (let x = 0; x <= 12; x++) {
        const { low, high } = clopperPearson(x, 12);
        if (low <= p && p <= high) covered += chance;
        chance *= ((12 - x) / (x + 1)) * (p / (1 - p));
      }
      expect(covered).toBeGreaterThanOrEqual(0.95);
    }
  });
});
