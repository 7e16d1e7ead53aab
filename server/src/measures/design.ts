import { LEVEL } from './fisher.ts';
import { measured, undefinedBecause, isUndefined, type Measured } from './measured.ts';
import { power, powerOf, WANTED_POWER } from './power.ts';
import { rejectionRegion } from './rejection.ts';
import { deviate } from './tails.ts';

/** More seeds a side than this are not looked for: hardly a grower sows them for a trial. */
export const MOST_SEEDS_A_SIDE = 200;

/** About half and half is best; as far from it as this, one or two seeds may make a difference. */
const UNEVEN_WITHIN = 5;

/** With more seeds than this on both sides the sums take long, and all that matters can be seen. */
export const MOST_RECKONED = 250;
const MOST_SEEDS = 5000;

/** Percentage points between any two shares that so many seeds tell apart (250 a side: power 0.91 or more). */
export const POINTS_OF_MANY = 15;

export function isReckoned(n1: number, n2: number): boolean {
  return Math.min(n1, n2) <= MOST_RECKONED && n1 + n2 <= MOST_SEEDS;
}

/**
 * The power of Fisher's test as far as it is reckoned: of so many seeds as more would take too long, which is a little
 * less than the power of all of them.
 *
 * @example
 * reckonedPower(10_000, 9_000, 0.59, 0.29) // 0.9999994604570632, as with 250 a side
 */
export function reckonedPower(n1: number, n2: number, p1: number, p2: number): number {
  const most = Math.min(n1, n2) > MOST_RECKONED ? MOST_RECKONED : MOST_SEEDS - MOST_RECKONED;
  return power(Math.min(n1, most), Math.min(n2, most), p1, p2);
}

/**
 * The smallest number of seeds a side with which Fisher's test has the wanted power against true shares p1
 * and p2.
 *
 * Exact: each number is tried from one surely too small. The power does not rise evenly with the number of
 * seeds; a slightly larger design may have a slightly lower power.
 *
 * @example
 * seedsASide(0.2, 0.8) // { value: 12 }
 */
export function seedsASide(p1: number, p2: number, wanted = WANTED_POWER): Measured {
  if (p1 === p2) return undefinedBecause('there is no difference to see');
  for (let n = surelyTooFew(p1, p2, wanted); n <= MOST_SEEDS_A_SIDE; n++) {
    if (powerOf(rejectionRegion(n, n), p1, p2) >= wanted) return measured(n);
  }
  return undefinedBecause(`more than ${MOST_SEEDS_A_SIDE} seeds a side would be needed`);
}

/**
 * A test of arcsines needs 2 (z + z')^2 / h^2 seeds a side, h the difference of 2 arcsin sqrt p (Cohen 1988,
 * from memory). The exact test needs more.
 */
function surelyTooFew(p1: number, p2: number, wanted: number): number {
  const h = 2 * (Math.asin(Math.sqrt(p1)) - Math.asin(Math.sqrt(p2)));
  const z = deviate(1 - LEVEL) + deviate(2 * wanted - 1);
  return Math.max(1, Math.floor(0.9 * 2 * (z / h) ** 2));
}

/**
 * The smallest true share of the treated seed that a design can tell from the share of the untreated, with
 * the wanted power: what can be seen with these seeds.
 *
 * @example
 * visibleShare(12, 12, 0.2) // { value: 0.796 }: 20 against 80 %
 */
export function visibleShare(
  treated: number,
  untreated: number,
  share: number,
  wanted = WANTED_POWER,
): Measured {
  if (!isReckoned(treated, untreated)) return undefinedBecause('Plumule does not calculate with so many seeds');
  const region = rejectionRegion(treated, untreated);
  if (powerOf(region, 1, share) < wanted) {
    return undefinedBecause('even if every treated seed germinated, chance could explain the difference');
  }
  let [low, high] = [share, 1];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (powerOf(region, middle, share) < wanted) low = middle;
    else high = middle;
  }
  return measured(high);
}

/** How to divide seeds, and the smallest treated share that can be seen then. */
export interface Split {
  readonly treated: number;
  readonly untreated: number;
  readonly visible: Measured;
}

/**
 * The division of all the seeds into treated and untreated that lets the smallest difference be seen. About
 * half and half; Fisher's test moves in steps, so that one or two seeds more on a side can do better.
 *
 * @example
 * bestSplit(24, 0.4) // { treated: 12, untreated: 12, visible: { value: 0.95... } }
 */
export function bestSplit(seeds: number, share: number, wanted = WANTED_POWER): Split {
  const half = Math.ceil(seeds / 2);
  if (half > MOST_RECKONED) return splitOf(seeds - MOST_RECKONED, MOST_RECKONED, share, wanted);
  let best = splitOf(half, seeds - half, share, wanted);
  for (let by = 1; by <= UNEVEN_WITHIN; by++) {
    for (const treated of [half + by, half - by]) {
      if (treated < 1 || treated >= seeds) continue;
      const split = splitOf(treated, seeds - treated, share, wanted);
      if (visible(split) < visible(best)) best = split;
    }
  }
  return best;
}

function splitOf(treated: number, untreated: number, share: number, wanted: number): Split {
  return { treated, untreated, visible: visibleShare(treated, untreated, share, wanted) };
}

function visible(split: Split): number {
  return isUndefined(split.visible) ? Infinity : split.visible.value;
}
