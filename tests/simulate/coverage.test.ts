import { expect, test } from 'vitest';
import { coverages, INTERVALS, runCoverage, type Interval } from './coverage.ts';

test('intervals that are shown hold what was true of the seed', () => {
  const coverage = coverages.find(({ name }) => name === 'intervals, 60 % and faster, weekly, 50 a side')!;
  const found = runCoverage(coverage, 1, 0, 80);
  expect(Object.keys(found)).toContain('difference of shares');
  for (const [interval, { held, shown }] of Object.entries(found)) {
    const least = INTERVALS[interval as Interval];
    // Three standard errors; in so few lots only a gross mistake shows.
    expect(held / shown, interval).toBeGreaterThanOrEqual(least - 3 * Math.sqrt(least * (1 - least) / shown));
    expect(shown).toBeGreaterThan(40);
  }
});
