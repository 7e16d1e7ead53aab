import { upperPoint, upperTail } from './tails.ts';

/** Points of the midpoint rule; the integrand is smooth. */
const POINTS = 200;

/**
 * The chance that both of two standard normal variables reach the same value.
 *
 * P(X > h) P(Y > h) + 1 / (2 pi) times the integral of exp(-h^2 / (1 + sin t)) from 0 to asin r: Plackett 1954,
 * Biometrika 41:351-360 (from memory). As R's `mvtnorm::pmvnorm` and SciPy's `multivariate_normal.cdf`.
 *
 * @example
 * bothReach(1.959963985, 0.5) // 0.0054
 */
export function bothReach(h: number, correlation: number): number {
  const end = Math.asin(Math.max(-1, Math.min(1, correlation)));
  let sum = 0;
  for (let i = 0; i < POINTS; i++) {
    const sine = Math.sin(((i + 0.5) / POINTS) * end);
    if (1 + sine > 0) sum += Math.exp(-(h ** 2) / (1 + sine));
  }
  return Math.max(0, upperTail(h) ** 2 + (sum * end) / POINTS / (2 * Math.PI));
}

/**
 * A one-sided p-value that allows for other tests of the same seeds: the chance that this test or any of the others
 * gives a p-value as small as this one. The more another test goes along with the first one of the family, the less it
 * adds.
 *
 * m p less the chance that the first test and each other reach it together: the bound of Hunter 1976, J Appl Probab
 * 13:597-603, and Worsley 1982, Biometrika 69:297-302 (both from memory), with normal variables. At most Bonferroni's
 * m p, at least p.
 *
 * @param correlations of each other test with the first one
 * @example
 * jointP(0.01, [1]) // 0.01
 * jointP(0.01, [0]) // 0.0199
 */
export function jointP(p: number, correlations: readonly number[]): number {
  if (p <= 0 || p >= 0.5) return Math.min(1, p * (1 + correlations.length));
  const h = upperPoint(p);
  const added = correlations.reduce((sum, correlation) => sum + Math.max(0, p - bothReach(h, correlation)), 0);
  return Math.min(1, p + added);
}
