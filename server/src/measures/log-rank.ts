import { seedsOf, type LifeTable } from './life-table.ts';
import { undefinedBecause, type Undefined } from './measured.ts';
import { chiSquareTail } from './tails.ts';

/** Two samples of one stratum: of one lot in one winter. */
export interface Pair {
  readonly first: LifeTable;
  readonly second: LifeTable;
}

export interface LogRank {
  /** Germinated in the first sample, and how many would have if both had germinated alike. */
  readonly observed: number;
  readonly expected: number;
  /** Germinated in both samples; the second one was expected to have `total - expected`. */
  readonly total: number;
  readonly variance: number;
  /** Days with germination; of several pairs those of the one that has most. */
  readonly days: number;
  /** (O - E)^2 / V, 1 degree of freedom. */
  readonly chiSquare: number;
  readonly p: number;
}

/**
 * The log-rank test of two whole courses of germination; with several pairs, stratified: only seed of the
 * same pair is compared, the sums are added up. O above E: the first sample germinated earlier or more.
 *
 * E = sum d n1 / n and the hypergeometric V = sum d (n1 / n) (1 - n1 / n) (n - d) / (n - 1) over the days
 * with germination. Mantel 1966, Cancer Chemother Rep 50:163-170; Peto & Peto 1972, J R Stat Soc A
 * 135:185-207 (both from memory). As R's `survdiff`. The p-value is asymptotic and too small for a
 * handful of seeds.
 *
 * @example
 * logRank([{ first: [{ day: 6, germinated: 3, censored: 0 }, { day: 40, germinated: 0, censored: 12 }],
 *   second: [{ day: 40, germinated: 0, censored: 15 }] }])
 * // observed 3, expected 1.5, variance 0.6982758621, chiSquare 3.2222222222, p 0.0726449477
 */
export function logRank(strata: readonly Pair[]): LogRank | Undefined {
  let [observed, expected, total, variance, days] = [0, 0, 0, 0, 0];
  for (const pair of strata) {
    let seen = 0;
    for (const { d1, d, n1, n } of germinationDays(pair)) {
      const share = n1 / n;
      observed += d1;
      expected += d * share;
      total += d;
      if (n > 1) variance += (d * share * (1 - share) * (n - d)) / (n - 1);
      days = Math.max(days, ++seen);
    }
  }
  if (variance === 0) return undefinedBecause('on no day did both sides have seed that could differ');
  const chiSquare = (observed - expected) ** 2 / variance;
  return { observed, expected, total, variance, days, chiSquare, p: chiSquareTail(chiSquare, 1) };
}

/** Germinated (d) and at risk (n) on each day with germination, in the first sample and in both. */
function* germinationDays({ first, second }: Pair): Generator<Record<'d1' | 'd' | 'n1' | 'n', number>> {
  let [n1, n2] = [seedsOf(first), seedsOf(second)];
  const days = new Set([...first, ...second].map(exit => exit.day));
  for (const day of [...days].sort((a, b) => a - b)) {
    const a = first.find(exit => exit.day === day);
    const b = second.find(exit => exit.day === day);
    const d1 = a?.germinated ?? 0;
    const d = d1 + (b?.germinated ?? 0);
    if (d > 0) yield { d1, d, n1, n: n1 + n2 };
    n1 -= d1 + (a?.censored ?? 0);
    n2 -= (b?.germinated ?? 0) + (b?.censored ?? 0);
  }
}
