import { undefinedBecause, type Undefined } from './measured.ts';
import { chiSquareTail } from './tails.ts';

/** One step of a ladder of doses. */
export interface Rung {
  readonly score: number;
  readonly x: number;
  readonly n: number;
}

export interface Trend {
  /**
   * Change of the share with each unit of the score, least squares weighted by n; its sign is the direction.
   */
  readonly slope: number;
  readonly chiSquare: number;
  readonly p: number;
}

/**
 * The Cochran-Armitage test for a trend of shares with a score, two-sided, 1 degree of freedom, variance from
 * the pooled share. The chi-square is divided by the overdispersion of the replicates.
 *
 * X2 = (sum s (x - n p))^2 / (p q (sum n s^2 - (sum n s)^2 / N)). Cochran 1954, Biometrics 10:417-451;
 * Armitage 1955, Biometrics 11:375-386 (both from memory). As R's `prop.trend.test`.
 *
 * @example
 * trend([{ score: 0, x: 2, n: 10 }, { score: 1, x: 5, n: 10 }, { score: 2, x: 8, n: 10 }])
 * // { slope: 0.3, chiSquare: 7.2, p: 0.0072903581 }
 */
export function trend(rungs: readonly Rung[], overdispersion = 1): Trend | Undefined {
  const sum = (term: (rung: Rung) => number): number => rungs.reduce((total, rung) => total + term(rung), 0);
  const seeds = sum(rung => rung.n);
  const p = sum(rung => rung.x) / seeds;
  const spread = sum(({ n, score }) => n * score ** 2) - sum(({ n, score }) => n * score) ** 2 / seeds;
  if (!(p > 0 && p < 1)) return undefinedBecause('all doses germinated alike');
  if (!(spread > 0)) return undefinedBecause('there is only one dose');
  const slope = sum(({ x, n, score }) => score * (x - n * p)) / spread;
  const chiSquare = (slope ** 2 * spread) / (p * (1 - p) * overdispersion);
  return { slope, chiSquare, p: chiSquareTail(chiSquare, 1) };
}

/**
 * Scores for a ladder: 0, 1, 2, ... in order of the dose, equal doses alike. The steps of a ladder are mostly
 * multiples of each other; the doses themselves as scores would let the highest one decide alone.
 *
 * @example
 * rankScores([0, 250, 500, 1000]) // [0, 1, 2, 3]
 */
export function rankScores(doses: readonly number[]): readonly number[] {
  const ladder = [...new Set(doses)].sort((a, b) => a - b);
  return doses.map(dose => ladder.indexOf(dose));
}
