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
  if (p <= 0) return certain(n, 0);
  if (p >= 1) return certain(n, n);
  const odds = p / (1 - p);
  return fromMode(n, Math.min(n, Math.floor((n + 1) * p)), x => ((n - x) / (x + 1)) * odds);
}

/** The distribution of the count of one side when the sum of both sides is given. */
export interface Hypergeometric {
  /** The smallest possible count; `probabilities[i]` belongs to the count `first + i`. */
  readonly first: number;
  readonly probabilities: Float64Array;
}

/**
 * All the probabilities of a hypergeometric distribution: of n1 + n2 seeds, `total` germinated; how many of
 * them were among the n1?
 *
 * @example
 * hypergeometric(4, 4, 4).probabilities // 1/70, 16/70, 36/70, 16/70, 1/70
 */
export function hypergeometric(n1: number, n2: number, total: number): Hypergeometric {
  const first = Math.max(0, total - n2);
  const last = Math.min(n1, total);
  const mode = Math.floor(((total + 1) * (n1 + 1)) / (n1 + n2 + 2));
  const probabilities = fromMode(last - first, Math.min(last, Math.max(first, mode)) - first, i => {
    const x = first + i;
    return ((n1 - x) * (total - x)) / ((x + 1) * (n2 - total + x + 1));
  });
  return { first, probabilities };
}

function certain(n: number, x: number): Float64Array {
  const probabilities = new Float64Array(n + 1);
  probabilities[x] = 1;
  return probabilities;
}

/** Values 0..last in proportion to a distribution whose P(i + 1) / P(i) is given, scaled to the sum 1. */
function fromMode(last: number, mode: number, ratio: (i: number) => number): Float64Array {
  const values = new Float64Array(last + 1);
  values[mode] = 1;
  let sum = 1;
  for (let i = mode; i < last; i++) sum += values[i + 1] = values[i]! * ratio(i);
  for (let i = mode; i > 0; i--) sum += values[i - 1] = values[i]! / ratio(i - 1);
  return values.map(value => value / sum);
}
