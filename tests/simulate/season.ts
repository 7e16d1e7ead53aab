/** What becomes of the seed of a dish: the truth that the counts see a part of. Days are real numbers from day 0. */
import gammainc from '@stdlib/math-base-special-gammainc';
import { beta, between, gamma, normal, type Random } from './random.ts';

/** How the days of germination scatter around their median; one and the same for all the seed of a lot. */
export interface Scatter {
  /** A day, of seed whose median is 1. */
  readonly draw: (random: Random) => number;
  /** The share that is up by such a day. */
  readonly upBy: (day: number) => number;
}

export interface Seedling {
  readonly up: number;
  /** From when on it is seen to be drawn out or crippled, and when it dies; Infinity: never. */
  readonly leggy: number;
  readonly abnormal: number;
  readonly dies: number;
}

export interface Dish {
  readonly seeds: number;
  readonly seedlings: readonly Seedling[];
  /** Days on which seed rots that does not germinate. */
  readonly rots: readonly number[];
  /** Days on which seed is lost that is not up. */
  readonly losses: readonly number[];
}

export const weakKinds = ['leggy', 'abnormal', 'died', 'leggy, then died'] as const;
export type WeakKind = typeof weakKinds[number];

export interface Weak {
  /** Share of the seedlings. */
  readonly share: number;
  readonly kind: WeakKind;
}

/** How the seed of one side comes up. */
export interface Nature {
  /** Of the seed, how much germinates at all. */
  readonly share: number;
  /** Day on which half of that is up. */
  readonly median: number;
  /** Correlation of two seeds of one dish: each dish has a share of its own, from a beta distribution. */
  readonly rho?: number;
  /** A dish as a whole is early or late by up to so many days. */
  readonly shift?: number;
  readonly weak?: Weak;
  /** Of the seed that does not germinate, how much rots within sight. */
  readonly rotting?: number;
  /** Of all the seed, how much is dropped or eaten in the course of the season, unless it is up by then. */
  readonly losing?: number;
  /** Of the seedlings, how many are up before the sowing already, in the so many days of cold before it. */
  readonly inCold?: { readonly share: number; readonly days: number };
}

/** Log-normal or gamma, with a median of 1. */
export function scatterOf(random: Random, spread = between(random, 0.25, 0.6)): Scatter {
  if (random() < 0.5) {
    return {
      draw: chance => Math.exp(spread * normal(chance)),
      upBy: day => normalBelow(Math.log(day) / spread),
    };
  }
  const shape = spread ** -2;
  // The median of a gamma distribution, to a part in a thousand: Choi 1994 (memory).
  const median = shape - 1 / 3 + 8 / (405 * shape);
  return { draw: chance => gamma(chance, shape) / median, upBy: day => gammainc(day * median, shape) };
}

/** By the incomplete gamma function: a squared standard normal is a chi-square with one degree of freedom. */
function normalBelow(z: number): number {
  return 0.5 + Math.sign(z) * gammainc(z * z / 2, 0.5) / 2;
}

/** The share of all the seed that is up by a day, with no shift and nothing lost. */
export function shareUpBy({ share, median }: Nature, { upBy }: Scatter, day: number): number {
  return day > 0 ? share * upBy(day / median) : 0;
}

export function growDish(random: Random, seeds: number, nature: Nature, scatter: Scatter): Dish {
  const { rho = 0, shift = 0, weak, rotting = 0, losing = 0 } = nature;
  const share = shareOfDish(random, nature.share, rho);
  const late = shift === 0 ? 0 : between(random, -shift, shift);
  const [seedlings, rots, losses]: [Seedling[], number[], number[]] = [[], [], []];
  for (let i = 0; i < seeds; i++) {
    const up = random() < share ? dayOf(random, nature, scatter, late) : Infinity;
    const lost = losing > 0 && random() < losing ? between(random, 3, 80) : Infinity;
    if (lost < up) losses.push(lost);
    else if (up < Infinity) seedlings.push(seedling(random, up, weak));
    else if (rotting > 0 && random() < rotting) rots.push(between(random, 5, 90));
  }
  return { seeds, seedlings, rots, losses };
}

function dayOf(random: Random, { median, inCold }: Nature, scatter: Scatter, late: number): number {
  if (inCold && random() < inCold.share) return -between(random, 0, inCold.days / 2);
  return Math.max(0.5, median * scatter.draw(random) + late);
}

function shareOfDish(random: Random, share: number, rho: number): number {
  if (rho === 0 || share === 0 || share === 1) return share;
  const total = 1 / rho - 1;
  return beta(random, share * total, (1 - share) * total);
}

function seedling(random: Random, up: number, weak: Weak | undefined): Seedling {
  const sound = { up, leggy: Infinity, abnormal: Infinity, dies: Infinity };
  if (!weak || random() >= weak.share) return sound;
  const seen = up + between(random, 0, 8);
  switch (weak.kind) {
    case 'leggy': return { ...sound, leggy: seen };
    case 'abnormal': return { ...sound, abnormal: seen };
    case 'died': return { ...sound, dies: seen };
    case 'leggy, then died': return { ...sound, leggy: seen, dies: seen + between(random, 3, 20) };
  }
}
