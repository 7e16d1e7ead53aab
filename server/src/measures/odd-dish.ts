import type { Share } from './difference.ts';
import { fisher, reaches } from './fisher.ts';
import { isUndefined } from './measured.ts';
import { pool } from './replicates.ts';

/** Without any difference between the dishes, one is called odd no more often than this; as for their range. */
const RARELY = 0.025;

/** With two dishes nobody can tell which of them is the odd one. */
const FEWEST = 3;

export interface OddDish {
  /** Its place among the dishes. */
  readonly index: number;
  readonly dish: Share;
  /** All the others together. */
  readonly others: Share;
  /** Fisher's test of the two, two-sided, times the number of dishes. */
  readonly p: number;
}

/**
 * The one dish of several that does not go with the others, where the others go with each other; undefined if there is
 * none, or if more than one is odd.
 *
 * Fisher's exact test of each dish against all the others together, with Bonferroni's correction for their number.
 * Common practice, no source.
 *
 * @example
 * oddDish([18, 18, 18, 8].map(x => ({ x, n: 25 }))) // { index: 3, others: { x: 54, n: 75 }, p: 0.0027, ... }
 */
export function oddDish(dishes: readonly Share[]): OddDish | undefined {
  if (dishes.length < FEWEST) return undefined;
  const all = dishes.reduce((sum, { x, n }) => ({ x: sum.x + x, n: sum.n + n }), { x: 0, n: 0 });
  const tested = dishes.map((dish, index): OddDish => {
    const others = { x: all.x - dish.x, n: all.n - dish.n };
    return { index, dish, others, p: Math.min(1, dishes.length * fisher(dish, others).twoSided) };
  });
  const odd = tested.reduce((a, b) => (b.p < a.p ? b : a));
  if (!reaches(odd.p, RARELY)) return undefined;
  const { heterogeneity } = pool(dishes.filter((_, index) => index !== odd.index));
  return !isUndefined(heterogeneity) && reaches(heterogeneity.p, RARELY) ? undefined : odd;
}
