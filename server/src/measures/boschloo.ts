import { binomialProbabilities, hypergeometric } from './discrete.ts';
import type { Share } from './difference.ts';
import { asUnlikely } from './fisher.ts';

/** A p-value of Fisher's above this is far from any verdict, and stays as it is. */
const FAR = 0.2;

/** With more seeds than this on a side Fisher's test is as good, and the sums would take long. */
const MOST_SEEDS = 300;

/** Shares of the seed at which the chance of the region is looked up before the greatest one is closed in on. */
const SHARES = 64;

/**
 * Boschloo's exact unconditional test of two shares, one-sided: the chance, at the share that both sides have in common
 * and that makes it greatest, of an outcome that Fisher's one-sided test finds as unlikely as the one seen. It keeps
 * its level as Fisher's test does and finds more. Where Fisher's p is above 0.2, or a side has more than 300 seeds,
 * that is given in its place: it is never the smaller one.
 *
 * Boschloo 1970, Stat Neerl 24:1-35 (from memory). As SciPy's `boschloo_exact(..., alternative='greater')`.
 *
 * @returns the p-value that the first share is the greater one; counts must be whole
 * @example
 * boschloo({ x: 7, n: 8 }, { x: 2, n: 8 }) // 0.0081, where Fisher's test has 0.0203
 */
export function boschloo(first: Share, second: Share): number {
  const seen = fisherGreater(first.n, second.n, first.x + second.x).at(first.x);
  if (Math.max(first.n, second.n) > MOST_SEEDS || seen > FAR) return seen;
  const least = regionOf(first.n, second.n, seen);
  const chance = (share: number): number => chanceOf(least, first.n, second.n, share);
  let [best, greatest] = [0, 0];
  for (let i = 1; i < SHARES; i++) {
    const p = chance(i / SHARES);
    if (p > greatest) [best, greatest] = [i, p];
  }
  return Math.min(1, Math.max(greatest, peak(chance, (best - 1) / SHARES, (best + 1) / SHARES)));
}

interface Tail {
  /** The one-sided p-value with so many germinated of the first sample. */
  readonly at: (x: number) => number;
}

/** Fisher's one-sided p-values of all tables with these margins. */
function fisherGreater(n1: number, n2: number, total: number): Tail {
  const { first, probabilities } = hypergeometric(n1, n2, total);
  const tails = new Float64Array(probabilities.length);
  let sum = 0;
  for (let i = probabilities.length - 1; i >= 0; i--) tails[i] = sum += probabilities[i]!;
  return { at: x => (x <= first ? 1 : x - first < tails.length ? Math.min(1, tails[x - first]!) : 0) };
}

/** For each number germinated in all, the fewest of the first sample that Fisher's test finds as unlikely as `seen`. */
function regionOf(n1: number, n2: number, seen: number): Int32Array {
  const least = new Int32Array(n1 + n2 + 1);
  for (let total = 0; total <= n1 + n2; total++) {
    const { at } = fisherGreater(n1, n2, total);
    let x = Math.min(n1, total) + 1;
    while (x > Math.max(0, total - n2) && asUnlikely(at(x - 1), seen)) x--;
    least[total] = x;
  }
  return least;
}

function chanceOf(least: Int32Array, n1: number, n2: number, share: number): number {
  const [a, b] = [binomialProbabilities(n1, share), binomialProbabilities(n2, share)];
  let sum = 0;
  for (let total = 0; total < least.length; total++) {
    for (let x = Math.min(n1, total); x >= least[total]!; x--) sum += a[x]! * b[total - x]!;
  }
  return sum;
}

/**
 * The greatest value between two points, by golden section: the chance is smooth, with one peak between two shares. Of
 * the two points within, one is a point within the next section too. So flat is the peak that its height is known to
 * ten digits when its place is to six.
 */
function peak(of: (share: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [atA, atB] = [of(a), of(b)];
  for (let i = 0; i < 24; i++) {
    if (atA < atB) {
      [low, a, atA] = [a, b, atB];
      b = low + golden * (high - low);
      atB = of(b);
    } else {
      [high, b, atB] = [b, a, atA];
      a = high - golden * (high - low);
      atA = of(a);
    }
  }
  return Math.max(atA, atB);
}
