import type { Share } from './difference.ts';
import { undefinedBecause, type Interval, type Undefined } from './measured.ts';
import { CONFIDENCE } from './proportion.ts';
import { chiSquareTail, deviate } from './tails.ts';

/** Treated and untreated seed of one lot in one winter. */
export interface Stratum {
  readonly first: Share;
  readonly second: Share;
}

export interface ChiSquare {
  readonly chiSquare: number;
  readonly df: number;
  readonly p: number;
}

/** The odds of germinating in the first samples over those in the second. 1: alike. */
export interface OddsRatio extends Interval {
  readonly value: number;
}

export interface MantelHaenszel {
  /** Seeds germinated in the first samples beyond the number expected if both were alike. */
  readonly excess: number;
  /** Undefined when it would be infinite. */
  readonly oddsRatio: OddsRatio | Undefined;
  readonly test: ChiSquare;
  /** With the continuity correction of 1/2, the more cautious one. */
  readonly corrected: ChiSquare;
}

/** A fourfold table: germinated and not in the first sample (a, b), in the second (c, d). */
export interface Fourfold {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly n: number;
}

/** The tables of the strata that can tell something: seed on both sides, some germinated and some not. */
export function informative(strata: readonly Stratum[]): readonly Fourfold[] {
  return strata
    .map(({ first, second }) => {
      const table = { a: first.x, b: first.n - first.x, c: second.x, d: second.n - second.x };
      return { ...table, n: first.n + second.n };
    })
    .filter(({ a, b, c, d }) => a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
}

/**
 * Treated against untreated across lots and winters: each stratum compares like with like, and only the
 * comparisons are combined. Pooling the tables instead can turn an effect around.
 *
 * Odds ratio sum(a d / n) / sum(b c / n), with the variance of its logarithm of Robins, Breslow & Greenland
 * 1986, Biometrics 42:311-323; chi-square (|sum a - sum E| [- 1/2])^2 / sum V, V hypergeometric. Mantel &
 * Haenszel 1959, J Natl Cancer Inst 22:719-748 (all from memory). As R's `mantelhaen.test`.
 *
 * @example
 * mantelHaenszel([
 *   { first: { x: 8, n: 10 }, second: { x: 2, n: 10 } },
 *   { first: { x: 5, n: 6 }, second: { x: 2, n: 6 } }])
 * // oddsRatio { value: 13.2727272727, low: 2.4035773764, high: 73.2929553177 },
 * // test { chiSquare: 9.5915014164, df: 1, p: 0.0019548003 }
 */
export function mantelHaenszel(
  strata: readonly Stratum[],
  confidence = CONFIDENCE,
): MantelHaenszel | Undefined {
  const tables = informative(strata);
  if (tables.length === 0) return undefinedBecause('no lot has germinated and other seed, treated and untreated');
  const excess = sumOf(tables, ({ a, b, c, n }) => a - ((a + b) * (a + c)) / n);
  const variance = sumOf(tables, ({ a, b, c, d, n }) => (
    ((a + b) * (c + d) * (a + c) * (b + d)) / (n ** 2 * (n - 1))));
  const chiSquareOf = (correction: number): ChiSquare => {
    const chiSquare = (Math.abs(excess) - Math.min(correction, Math.abs(excess))) ** 2 / variance;
    return { chiSquare, df: 1, p: chiSquareTail(chiSquare, 1) };
  };
  return {
    excess,
    oddsRatio: oddsRatioOf(tables, confidence),
    test: chiSquareOf(0),
    corrected: chiSquareOf(0.5),
  };
}

function oddsRatioOf(tables: readonly Fourfold[], confidence: number): OddsRatio | Undefined {
  const r = sumOf(tables, ({ a, d, n }) => (a * d) / n);
  const s = sumOf(tables, ({ b, c, n }) => (b * c) / n);
  if (r === 0 || s === 0) {
    return undefinedBecause(s === 0 ? 'it is infinite with these counts' : 'it is 0 with these counts, without an interval');
  }
  const pr = sumOf(tables, ({ a, d, n }) => (((a + d) / n) * (a * d)) / n);
  const mixed = sumOf(tables, ({ a, b, c, d, n }) => (((a + d) / n) * (b * c) + ((b + c) / n) * (a * d)) / n);
  const qs = sumOf(tables, ({ b, c, n }) => (((b + c) / n) * (b * c)) / n);
  const width = deviate(confidence) * Math.sqrt(pr / (2 * r ** 2) + mixed / (2 * r * s) + qs / (2 * s ** 2));
  const value = r / s;
  return { value, low: value * Math.exp(-width), high: value * Math.exp(width) };
}

function sumOf(tables: readonly Fourfold[], term: (table: Fourfold) => number): number {
  return tables.reduce((sum, table) => sum + term(table), 0);
}
