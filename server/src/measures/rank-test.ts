import { upperTail } from './tails.ts';

/** Seed of both sides that was found up between two ages; the last category has the seed that never was. */
export interface Category {
  readonly first: number;
  readonly second: number;
}

export interface RankTest {
  /** One-sided: the chance of the first side being as far ahead, or further, where both germinate alike. */
  readonly p: number;
  /** The score of the seed of each category: the earlier, the higher. */
  readonly scores: readonly number[];
  /** Sum of the scores of the first side less its mean over all divisions of the seed, and the variance of that sum. */
  readonly excess: number;
  readonly variance: number;
  /** Whether p is the sum over all divisions of the seed, or from the normal curve. */
  readonly exact: boolean;
}

/** Steps between the highest and the lowest score; finer ones change nothing that can be seen. */
const LEVELS = 30;

/** Sums over all divisions up to about this many terms; more take longer than a glance. */
const MOST_TERMS = 400_000;

/** A p-value above this, by the normal curve, is far from any verdict, and stays as it is. */
const FAR = 0.1;

/**
 * The rank-sum test with ties, one-sided and exact: of all ways to divide the seeds between the two sides, the share in
 * which the first side would be as far ahead. Seeds are ranked by the category in which they were found, seed that
 * never germinated last; the mid-ranks are rounded to 30 steps, which a permutation test allows. With many seeds, and
 * where p is above 0.1, the normal curve takes its place, with half a step as correction.
 *
 * Wilcoxon 1945, Biometrics Bull 1:80-83; Mann & Whitney 1947, Ann Math Stat 18:50-60 (both from memory). Without
 * rounding as R's `coin::wilcox_test(distribution = 'exact')` and SciPy's `permutation_test`.
 *
 * @example
 * rankTest([{ first: 3, second: 0 }, { first: 0, second: 3 }]).p // 1/20
 */
export function rankTest(categories: readonly Category[]): RankTest {
  const scores = scoresOf(categories);
  const base = largest(categories);
  const others = categories
    .map((category, i) => ({ ...category, score: scores[i]! - scores[base]! }))
    .filter((_, i) => i !== base);
  const moved = others.reduce((sum, { first, second }) => sum + first + second, 0);
  const span = others.reduce((sum, { first, second, score }) => sum + (first + second) * Math.abs(score), 0);
  const moments = momentsOf(categories, scores);
  const rough = normalTail([moments]);
  return rough > FAR || moved * (moved + 1) * (span + 1) > MOST_TERMS
    ? { p: rough, scores, ...moments, exact: false }
    : { p: exactTail(others, categories[base]!), scores, ...moments, exact: true };
}

/** Mid-ranks from the last category up, from 0 to LEVELS. */
function scoresOf(categories: readonly Category[]): number[] {
  const ranks: number[] = [];
  let below = 0;
  for (let i = categories.length - 1; i >= 0; i--) {
    const seeds = seedsIn(categories[i]!);
    ranks[i] = below + seeds / 2;
    below += seeds;
  }
  const [low, high] = [Math.min(...ranks), Math.max(...ranks)];
  return ranks.map(rank => (high > low ? Math.round((LEVELS * (rank - low)) / (high - low)) : 0));
}

function largest(categories: readonly Category[]): number {
  return categories.reduce((best, category, i) => (seedsIn(category) > seedsIn(categories[best]!) ? i : best), 0);
}

export function seedsIn({ first, second }: Category): number {
  return first + second;
}

/** Over how many seeds of the other categories fall to the first side, and what their scores come to. */
function exactTail(others: readonly (Category & { readonly score: number })[], base: Category): number {
  const least = others.reduce((sum, category) => sum + Math.min(0, category.score) * seedsIn(category), 0);
  const most = others.reduce((sum, category) => sum + Math.max(0, category.score) * seedsIn(category), 0);
  const width = most - least + 1;
  const moved = others.reduce((sum, category) => sum + seedsIn(category), 0);
  let ways = new Float64Array((moved + 1) * width);
  ways[-least] = 1;
  let reached = 0;
  for (const { first, second, score } of others) {
    const seeds = first + second;
    const next = new Float64Array(ways.length);
    for (let taken = 0, chance = 1; taken <= seeds; taken++) {
      for (let count = 0; count <= reached; count++) {
        const [from, to] = [count * width, (count + taken) * width + taken * score];
        for (let sum = 0; sum < width; sum++) {
          const way = ways[from + sum]!;
          if (way > 0) next[to + sum]! += way * chance;
        }
      }
      chance *= (seeds - taken) / (taken + 1);
    }
    ways = next;
    reached += seeds;
  }
  const seen = others.reduce((sum, { first, score }) => sum + first * score, 0) - least;
  const first = others.reduce((sum, category) => sum + category.first, 0) + base.first;
  const rest = seedsIn(base);
  let [tail, all] = [0, 0];
  for (let count = Math.max(0, first - rest); count <= Math.min(moved, first); count++) {
    const chance = choose(rest, first - count);
    for (let sum = 0; sum < width; sum++) {
      const way = ways[count * width + sum]! * chance;
      all += way;
      if (sum >= seen) tail += way;
    }
  }
  return Math.min(1, tail / all);
}

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= Math.min(k, n - k); i++) ways *= (n - i + 1) / i;
  return ways;
}

type Moments = Pick<RankTest, 'excess' | 'variance'>;

function momentsOf(categories: readonly Category[], scores: readonly number[]): Moments {
  const sum = (term: (category: Category, score: number) => number): number => (
    categories.reduce((total, category, i) => total + term(category, scores[i]!), 0));
  const [n1, n] = [sum(({ first }) => first), sum(seedsIn)];
  const mean = sum((category, score) => seedsIn(category) * score) / n;
  const spread = sum((category, score) => seedsIn(category) * (score - mean) ** 2);
  return {
    excess: sum(({ first }, score) => first * score) - n1 * mean,
    variance: n > 1 ? (n1 * (n - n1) * spread) / (n * (n - 1)) : 0,
  };
}

/**
 * The test over several lots, each ranked by itself, by the normal curve: the sums of scores and their variances add
 * up. Van Elteren 1960, Bull Int Stat Inst 37:351-361 (from memory), with equal weight for each rank.
 */
export function normalTail(lots: readonly Moments[]): number {
  const excess = lots.reduce((sum, lot) => sum + lot.excess, 0);
  const variance = lots.reduce((sum, lot) => sum + lot.variance, 0);
  return variance > 0 ? upperTail((excess - 0.5) / Math.sqrt(variance)) : 1;
}
