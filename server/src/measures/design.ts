import { findingsOf, type Design, type Findings } from './finding.ts';
import { measured, undefinedBecause, isUndefined, type Measured } from './measured.ts';
import { powerOf, WANTED_POWER } from './power.ts';

/** More seeds of a side than this change little, and the sums take long: they are reckoned as so many. */
export const MOST_RECKONED = 250;

/** Percentage points between any two shares that so many seeds tell apart (250 a side: power 0.89 or more). */
export const POINTS_OF_MANY = 15;

/**
 * How much dishes are reckoned to differ where there are several: the correlation of two seeds of one dish. Common
 * practice, no source.
 */
const RHO = 0.05;

/** About half and half is best; as far from it as this, one or two seeds may make a difference. */
const UNEVEN_WITHIN = 3;

/** Divisions of more seeds than this a side differ by less than anybody can count. */
const UNEVEN_UP_TO = 100;

/** Seed testing counts four replicates, and dishes of fewer seeds than this tell little. Common practice, no source. */
const [FEWEST_IN_DISH, MOST_DISHES] = [6, 4];

/** Dishes of each side, and the treatments beside the untreated part, as far as they are known. */
export interface Layout {
  readonly dishes: { readonly treated: number; readonly untreated: number };
  readonly treatments: number;
}

export const ONE_DISH: Layout = { dishes: { treated: 1, untreated: 1 }, treatments: 1 };

/**
 * The design of so many seeds. With one dish a side nobody can tell dishes from treatments, so that they are taken to
 * be alike.
 */
export function designOf(treated: number, untreated: number, { dishes, treatments }: Layout): Design {
  return {
    treated: Math.min(treated, MOST_RECKONED), untreated: Math.min(untreated, MOST_RECKONED), treatments,
    dishes: { treated: Math.min(dishes.treated, treated), untreated: Math.min(dishes.untreated, untreated) },
    rho: dishes.treated + dishes.untreated > 2 ? RHO : 0,
  };
}

/** Designs that were asked for before: a hover asks for several shares of the same ones. */
const known = new Map<string, Findings>();
const MOST_KNOWN = 60;

function findings(design: Design): Findings {
  const key = JSON.stringify(design);
  let found = known.get(key);
  if (!found) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(key, found = findingsOf(design));
  }
  return found;
}

/**
 * The smallest true share of the treated seed for which the verdict is "worth repeating" with the wanted power, against
 * a true share of the untreated.
 *
 * @example
 * visibleShare(designOf(12, 12, ONE_DISH), 0.2) // { value: 0.74... }
 */
export function visibleShare(design: Design, share: number, wanted = WANTED_POWER): Measured {
  const all = findings(design);
  if (powerOf(all, 1, share) < wanted) {
    return undefinedBecause('even if every treated seed germinated, the verdict would hardly find it');
  }
  let [low, high] = [share, 1];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (powerOf(all, middle, share) < wanted) low = middle;
    else high = middle;
  }
  return measured(high);
}

/** How to divide seeds, and the smallest treated share that is found then. */
export interface Split {
  readonly treated: number;
  readonly untreated: number;
  readonly visible: Measured;
}

/**
 * The division of all the seeds, into as many treated parts as there are treatments and an untreated one, with which
 * the verdict finds the smallest difference. Half and half for one treatment; for several the untreated part is greater
 * by the root of their number, for all of them are held against it (Dunnett 1955, from memory).
 *
 * @example
 * bestSplit(24, 0.4, ONE_DISH) // { treated: 12, untreated: 12, visible: { value: 0.9... } }
 */
export function bestSplit(seeds: number, share: number, layout: Layout): Split {
  const { treatments } = layout;
  const splitOf = (treated: number): Split => {
    const untreated = seeds - treatments * treated;
    return { treated, untreated, visible: visibleShare(designOf(treated, untreated, layout), share) };
  };
  const even = Math.max(1, Math.round(seeds / (treatments + Math.sqrt(treatments))));
  const most = Math.floor((seeds - 1) / treatments);
  let best = splitOf(Math.min(even, most));
  if (even > UNEVEN_UP_TO) return best;
  for (let by = 1; by <= UNEVEN_WITHIN; by++) {
    for (const treated of [even + by, even - by].filter(n => n >= 1 && n <= most)) {
      const split = splitOf(treated);
      if (limitOf(split.visible) < limitOf(best.visible)) best = split;
    }
  }
  return best;
}

/** Seeds in dishes, and the smallest treated share that is found with them. */
export interface Dishes {
  /** Of each side. */
  readonly dishes: number;
  readonly visible: Measured;
}

/**
 * The number of dishes of each side with which the verdict finds the smallest difference where dishes differ; undefined
 * where the seeds do not fill two on a side.
 */
export function bestDishes(treated: number, untreated: number, share: number, treatments: number): Dishes | undefined {
  const most = Math.min(MOST_DISHES, Math.floor(Math.min(treated, untreated) / FEWEST_IN_DISH));
  let best: Dishes | undefined;
  for (let dishes = 2; dishes <= most; dishes++) {
    const layout = { dishes: { treated: dishes, untreated: dishes }, treatments };
    const visible = visibleShare(designOf(treated, untreated, layout), share);
    if (!best || limitOf(visible) < limitOf(best.visible)) best = { dishes, visible };
  }
  return best;
}

/** What is never found counts as worse than everything. */
export function limitOf(visible: Measured): number {
  return isUndefined(visible) ? 2 : visible.value;
}
