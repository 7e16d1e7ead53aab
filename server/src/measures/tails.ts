import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import gammainc from '@stdlib/math-base-special-gammainc';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';

/**
 * The standard normal deviate of a two-sided confidence.
 *
 * @example
 * deviate(0.95) // 1.959963984540054
 */
export function deviate(confidence: number): number {
  return normalQuantile(1 - (1 - confidence) / 2, 0, 1);
}

/** Probability of a standard normal variable at least as large. */
export function upperTail(z: number): number {
  return normalCdf(-z, 0, 1);
}

/** The standard normal value that is reached with a probability; infinite for 0 and 1. */
export function upperPoint(p: number): number {
  return -normalQuantile(p, 0, 1);
}

/** Probability of a t variable at least as large. */
export function tTail(t: number, df: number): number {
  return tCdf(-t, df);
}

/**
 * Probability of a chi-square at least as large. From the upper incomplete gamma function, not 1 - cdf, which
 * would lose the digits of a small probability.
 *
 * @example
 * chiSquareTail(3.841458820694124, 1) // 0.05
 */
export function chiSquareTail(chiSquare: number, df: number): number {
  return gammainc(chiSquare / 2, df / 2, true, true);
}

/** The value that a Beta(a, b) variable stays below with this probability. */
export function betaPoint(probability: number, a: number, b: number): number {
  return betaQuantile(probability, a, b);
}
