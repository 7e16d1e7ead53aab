/** The counts of a distribution that are likelier than nothing. */
export interface Distribution {
  /** The smallest such count; `probabilities[i]` belongs to the count `first + i`. */
  readonly first: number;
  readonly probabilities: Float64Array;
}

/** What is less likely than this beside the likeliest count is nothing: a seed in a universe of seeds. */
const NOTHING = 1e-300;

/**
 * All the probabilities of a binomial distribution, from 0 to n successes.
 *
 * By the ratio of neighbours, from the mode outwards, then divided by their sum: every value keeps full
 * precision and a whole distribution costs one multiplication a value, which the power of a design needs.
 *
 * @example
 * binomialProbabilities(2, 0.5) // [0.25, 0.5, 0.25]
 */
export function binomialProbabilities(n: number, p: number): Float64Array {
  const all = new Float64Array(n + 1);
  const { first, probabilities } = binomial(n, p);
  all.set(probabilities, first);
  return all;
}

/** The same without the counts that cannot happen. */
export function binomial(n: number, p: number): Distribution {
  if (p <= 0 || p >= 1) return { first: p <= 0 ? 0 : n, probabilities: Float64Array.of(1) };
  const odds = p / (1 - p);
  return fromMode(0, n, Math.min(n, Math.floor((n + 1) * p)), x => ((n - x) / (x + 1)) * odds);
}

/**
 * The probabilities of a hypergeometric distribution: of n1 + n2 seeds, `total` germinated; how many of
 * them were among the n1? Of a million seeds only the counts that can happen take room.
 *
 * @example
 * hypergeometric(4, 4, 4).probabilities // 1/70, 16/70, 36/70, 16/70, 1/70
 */
export function hypergeometric(n1: number, n2: number, total: number): Distribution {
  const least = Math.max(0, total - n2);
  const most = Math.min(n1, total);
  const mode = Math.floor(((total + 1) * (n1 + 1)) / (n1 + n2 + 2));
  return fromMode(least, most, Math.min(most, Math.max(least, mode)),
    x => ((n1 - x) * (total - x)) / ((x + 1) * (n2 - total + x + 1)));
}

/**
 * The probabilities of 0 to n successes where any two of the n go along with each other by the correlation rho: a share
 * that differs from dish to dish by a beta distribution. Skellam 1948, J R Stat Soc B 10:257-261 (from memory).
 *
 * @param rho from 0, which is the binomial distribution, up to but not including 1
 * @example
 * betaBinomialProbabilities(2, 0.5, 1 / 3) // [1/3, 1/3, 1/3]
 */
export function betaBinomialProbabilities(n: number, p: number, rho: number): Float64Array {
  // So small a correlation makes no difference, and its inverse overflows.
  if (rho < 1e-9 || p <= 0 || p >= 1) return binomialProbabilities(n, p);
  const all = new Float64Array(n + 1);
  const [a, b] = [p * (1 / rho - 1), (1 - p) * (1 / rho - 1)];
  const { first, probabilities } = fromMode(0, n, Math.round(n * p), x => ((n - x) * (x + a)) / ((x + 1) * (
    n - x - 1 + b)));
  all.set(probabilities, first);
  return all;
}

/** The probabilities of the sum of two independent counts, each from 0. */
export function sumProbabilities(first: Float64Array, second: Float64Array): Float64Array {
  const all = new Float64Array(first.length + second.length - 1);
  for (const [i, a] of first.entries()) for (const [j, b] of second.entries()) all[i + j]! += a * b;
  return all;
}

/** Counts from least to most in proportion to a distribution whose P(x + 1) / P(x) is given, scaled to the sum 1. */
function fromMode(least: number, most: number, mode: number, ratio: (x: number) => number): Distribution {
  const [below, above]: [number[], number[]] = [[], []];
  let sum = 1;
  for (let x = mode, value = 1; x > least; x--) {
    value /= ratio(x - 1);
    if (value < NOTHING) break;
    below.push(value);
    sum += value;
  }
  for (let x = mode, value = 1; x < most; x++) {
    value *= ratio(x);
    if (value < NOTHING) break;
    above.push(value);
    sum += value;
  }
  const probabilities = new Float64Array(below.length + 1 + above.length);
  for (let i = 0; i < below.length; i++) probabilities[below.length - 1 - i] = below[i]! / sum;
  probabilities[below.length] = 1 / sum;
  for (let i = 0; i < above.length; i++) probabilities[below.length + 1 + i] = above[i]! / sum;
  return { first: mode - below.length, probabilities };
}
