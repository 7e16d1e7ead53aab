import gammaln from '@stdlib/math-base-special-gammaln';
import { chiSquareTail, tTail, upperPoint, upperTail } from './tails.ts';

/** How far the dishes of one treatment lie apart, beside what chance allows. */
export interface Spread {
  /** How many times the variance between dishes exceeds that of chance; at least 1. */
  readonly factor: number;
  /** Degrees of freedom: dishes less treatments. 0: one dish a side, so that nobody can tell. */
  readonly df: number;
  /** Seeds in a dish, on average over the seeds. */
  readonly size: number;
}

/** A dish: how many of its seeds have which score. */
export type Dish = readonly { readonly seeds: number; readonly score: number }[];

/**
 * The spread of dishes over several treatments, each with dishes of its own: the mean square between the dishes of a
 * treatment over the variance of its seeds. For shares (scores 0 and 1) that is the heterogeneity chi-square over its
 * degrees of freedom; for ranks it sees dishes that are early or late.
 *
 * Quasi-likelihood: McCullagh & Nelder 1989, Generalized Linear Models, 4.5 (from memory).
 */
export function spreadOf(treatments: readonly (readonly Dish[])[]): Spread {
  let [squares, df] = [0, 0];
  const sizes: number[] = [];
  for (const dishes of treatments) {
    const full = dishes.filter(dish => seedsOf(dish) > 0);
    sizes.push(...full.map(seedsOf));
    if (full.length < 2) continue;
    df += full.length - 1;
    const all = full.flat();
    const mean = meanOf(all);
    const variance = all.reduce((sum, { seeds, score }) => sum + seeds * (score - mean) ** 2, 0) / seedsOf(all);
    const between = full.reduce((sum, dish) => sum + seedsOf(dish) * (meanOf(dish) - mean) ** 2, 0);
    if (variance > 0) squares += between / variance;
  }
  const seeds = sizes.reduce((sum, size) => sum + size, 0);
  const size = seeds > 0 ? sizes.reduce((sum, each) => sum + each ** 2, 0) / seeds : 0;
  return { factor: df === 0 ? 1 : Math.max(1, squares / df), df, size };
}

function seedsOf(dish: Dish): number {
  return dish.reduce((sum, { seeds }) => sum + seeds, 0);
}

function meanOf(dish: Dish): number {
  return dish.reduce((sum, { seeds, score }) => sum + seeds * score, 0) / seedsOf(dish);
}

/**
 * How much more alike the seeds of one dish are taken to be, at the most, than those of two: the intraclass correlation
 * of whether they germinate. Of the days there is no such limit: a dish on the warm end of the shelf may be days ahead.
 * Common practice, no source.
 */
const MOST_ALIKE = 0.1;

/** What a p-value is about: how many germinated, or when. */
export type About = 'share' | 'days';

/**
 * A one-sided p-value of single seeds, as it is for seeds in dishes. The normal deviate behind it is divided by the
 * root of the spread; and since a few dishes hardly show their spread, the chance is counted of getting that far at the
 * greatest variance between dishes that is allowed for: for days with no limit to it, which is the tail of Student's t,
 * for shares at 1 + (size - 1) MOST_ALIKE. With one dish a side the p-value stays as it is.
 *
 * @example
 * ofDishes(0.025, { factor: 1, df: 6, size: 12 }, 'days') // 0.0489: two sides of four dishes each
 */
export function ofDishes(p: number, spread: Spread, about: About): number {
  const { factor, df } = spread;
  if (df === 0 || p <= 0 || p >= 0.5) return p;
  return tailOf(upperPoint(p) / Math.sqrt(factor), spread, about);
}

function tailOf(t: number, { df, size }: Spread, about: About): number {
  return about === 'days' ? tTail(t, df) : tailAt(t, df, 1 + Math.max(0, size - 1) * MOST_ALIKE);
}

const STEPS = 200;

/**
 * The chance that a normal deviate with variance v, divided by the root of max(1, v X / df), reaches t, for X a
 * chi-square variable with df degrees of freedom: by Simpson's rule over log X. For v = 1 a little less than the tail
 * of the normal curve, for a great v that of Student's t.
 */
function tailAt(t: number, df: number, v: number): number {
  const from = df / v;
  const [low, high] = [Math.log(from), Math.log(df + 12 * Math.sqrt(2 * df) + 40)];
  const scale = (df / 2) * Math.LN2 + gammaln(df / 2);
  const of = (logX: number) => {
    const x = Math.exp(logX);
    return Math.exp((df / 2) * logX - x / 2 - scale) * upperTail(t * Math.sqrt(x / df));
  };
  const width = (high - low) / STEPS;
  let sum = of(low) + of(high);
  for (let i = 1; i < STEPS; i++) sum += of(low + i * width) * (i % 2 ? 4 : 2);
  return upperTail(t / Math.sqrt(v)) * (1 - chiSquareTail(from, df)) + (sum * width) / 3;
}

/**
 * How many times fewer seeds the dishes are worth for a 95 % interval of shares that is as wide as the tail above makes
 * it.
 *
 * @example
 * seedsForOne({ factor: 1, df: 6, size: 12 }) // about 1.3
 */
export function seedsForOne(spread: Spread): number {
  if (spread.df === 0) return 1;
  const key = `${spread.df} ${spread.size}`;
  let reach = known.get(key);
  if (reach === undefined) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(key, reach = reachOf(spread));
  }
  return spread.factor * Math.max(1, (reach / upperPoint(TAIL)) ** 2);
}

/** On each side of a 95 % interval. */
const TAIL = 0.025;

/** What was worked out before: the lots of a grower have dishes of a few sizes. */
const known = new Map<string, number>();
const MOST_KNOWN = 500;

function reachOf(spread: Spread): number {
  return reachFor(TAIL, spread, 'share');
}

/**
 * The deviate over the root of the spread that ofDishes takes for a p-value: what a difference must reach.
 *
 * @example
 * reachFor(0.025, { factor: 1, df: 6, size: 12 }, 'days') // 2.447, of Student's t
 */
export function reachFor(p: number, spread: Spread, about: About): number {
  if (spread.df === 0) return upperPoint(p);
  let [low, high] = [0, about === 'days' ? 400 : 20];
  for (let i = 0; i < 36; i++) {
    const middle = (low + high) / 2;
    if (tailOf(middle, spread, about) > p) low = middle;
    else high = middle;
  }
  return high;
}
