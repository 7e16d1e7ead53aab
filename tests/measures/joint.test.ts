import { describe, expect, test } from 'vitest';
import { bothReach, jointP } from '../../server/src/measures/joint.ts';

describe('tests of the same seeds taken together', () => {
  // SciPy 1.10.1: multivariate_normal.cdf([-h, -h], cov=[[1, r], [r, 1]])
  test.each([
    [1.959963984540054, 0.5, 0.004622282342626331],
    [2.5, 0.9, 0.0032182351128478377],
    [1.2, -0.3, 0.004373675977282145],
    [2, 0.99, 0.019711642648668967],
  ])('both reach %f at a correlation of %f as often as SciPy says', (h, r, p) => {
    expect(bothReach(h, r)).toBeCloseTo(p, 5);
  });

  test('cost nothing where they are one, and twice the p-value where they have nothing in common', () => {
    expect(jointP(0.01, [1])).toBeCloseTo(0.01, 4);
    expect(jointP(0.01, [0])).toBeCloseTo(1 - 0.99 ** 2, 6);
    expect(jointP(0.01, [])).toBe(0.01);
    expect(jointP(0.01, [0.8, 0.2])).toBeLessThan(0.03);
    expect(jointP(0.7, [0.5])).toBe(1);
  });
});
