import { germinated, shareOf, worth } from './contrast.ts';
import { seedsCounted, type Course } from './course.ts';
import type { Share } from './difference.ts';
import type { ChiSquare } from './mantel-haenszel.ts';
import { isUndefined, undefinedBecause, type Interval, type Undefined } from './measured.ts';
import { wilson } from './proportion.ts';
import { computedRange } from './range-criterion.ts';
import { chiSquareTail } from './tails.ts';
import { publishedRange } from './tolerance-table.ts';

/** Whether replicates of one size lie as close together as chance allows; in percentage points. */
export interface RangeCheck {
  readonly range: number;
  readonly tolerated: number;
  /** `published`: 7 CFR 201.55, for 2 or 4 times 100 seeds. `computed`: not a value of a rule book. */
  readonly basis: 'published' | 'computed';
  readonly passed: boolean;
}

/** Replicates taken together. */
export interface Pooled extends Share {
  /** Undefined for a single batch, and when all or none germinated. */
  readonly heterogeneity: ChiSquare | Undefined;
  /**
   * max(1, X2 / df): how many times the variance between the replicates exceeds that of chance. 1 when the
   * heterogeneity is undefined.
   */
  readonly overdispersion: number;
  /**
   * The seeds that the replicates are worth: x and n, divided by the overdispersion. Intervals are made of
   * these, which widens them by about its square root.
   */
  readonly effective: Share;
  /** Wilson interval of the effective seeds. */
  readonly interval: Interval;
  readonly range: RangeCheck | Undefined;
}

/**
 * Pools the replicates of one lot with one treatment. Where they differ more than chance allows, they are not
 * independent seeds, and the interval is widened. Each must have seeds.
 *
 * Heterogeneity chi-square sum (x_i - n_i p)^2 / (n_i p q) with df = replicates - 1; widening by sqrt(max(1,
 * X2 / df)) as in quasi-likelihood: McCullagh & Nelder 1989, Generalized Linear Models, 4.5 (from memory).
 *
 * @example
 * pool([{ x: 10, n: 39 }, { x: 23, n: 62 }, { x: 23, n: 81 }, { x: 26, n: 51 }, { x: 17, n: 39 }])
 * // x 99, n 272, heterogeneity { chiSquare: 9.7595, df: 4, p: 0.0447 }, overdispersion 2.44
 */
export function pool(replicates: readonly Share[]): Pooled {
  const x = sumOf(replicates, replicate => replicate.x);
  const n = sumOf(replicates, replicate => replicate.n);
  const heterogeneity = heterogeneityOf(replicates, x / n);
  const overdispersion = isUndefined(heterogeneity)
    ? 1
    : Math.max(1, heterogeneity.chiSquare / heterogeneity.df);
  const effective = worth({ x, n }, overdispersion);
  return {
    x,
    n,
    heterogeneity,
    overdispersion,
    effective,
    interval: wilson(effective.x, effective.n),
    range: rangeOf(replicates, x / n),
  };
}

/** Batches of one treatment, by their germinated seed of the seed sown less lost. */
export function poolOf(batches: readonly Course[]): Pooled {
  return pool(batches.map(batch => shareOf([batch], germinated, seedsCounted)));
}

/** Of several treatments together, each with replicates of its own: max(1, sum X2 / sum df). */
export function jointOverdispersion(treatments: readonly Pooled[]): number {
  let [chiSquare, df] = [0, 0];
  for (const { heterogeneity } of treatments) {
    if (isUndefined(heterogeneity)) continue;
    chiSquare += heterogeneity.chiSquare;
    df += heterogeneity.df;
  }
  return df === 0 ? 1 : Math.max(1, chiSquare / df);
}

function heterogeneityOf(replicates: readonly Share[], p: number): ChiSquare | Undefined {
  if (replicates.length < 2) return undefinedBecause('there is only one replicate');
  if (p === 0 || p === 1) return undefinedBecause(`${p === 0 ? 'none' : 'all'} germinated in every replicate`);
  const chiSquare = sumOf(replicates, ({ x, n }) => (x - n * p) ** 2 / (n * p * (1 - p)));
  const df = replicates.length - 1;
  return { chiSquare, df, p: chiSquareTail(chiSquare, df) };
}

function rangeOf(replicates: readonly Share[], share: number): RangeCheck | Undefined {
  if (replicates.length < 2) return undefinedBecause('there is only one replicate');
  const size = replicates[0]!.n;
  if (replicates.some(({ n }) => n !== size)) {
    return undefinedBecause('the replicates are not of one size');
  }
  const counts = replicates.map(({ x }) => x);
  const range = (100 * (Math.max(...counts) - Math.min(...counts))) / size;
  const published = size === 100 ? publishedRange(replicates.length, 100 * share) : undefined;
  const tolerated = published ?? (100 * computedRange(replicates.length, size, share)) / size;
  return { range, tolerated, basis: published === undefined ? 'computed' : 'published', passed: range <= tolerated };
}

function sumOf(replicates: readonly Share[], term: (replicate: Share) => number): number {
  return replicates.reduce((sum, replicate) => sum + term(replicate), 0);
}
