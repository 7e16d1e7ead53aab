/**
 * Holm's correction of several p-values: each may be held against the level as if it were the only test, and
 * the chance of any false finding among all of them stays below the level.
 *
 * The i-th smallest of m is multiplied by m + 1 - i, at least the one before, at most 1. Holm 1979, Scand J
 * Stat 6:65-70 (from memory). As R's `p.adjust`.
 *
 * @example
 * holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(ps: readonly number[]): readonly number[] {
  const adjusted = [...ps];
  const order = ps.map((_, i) => i).sort((a, b) => ps[a]! - ps[b]!);
  let least = 0;
  for (const [rank, i] of order.entries()) {
    least = Math.min(1, Math.max(least, ps[i]! * (ps.length - rank)));
    adjusted[i] = least;
  }
  return adjusted;
}
