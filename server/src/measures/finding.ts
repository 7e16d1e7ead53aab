import { boschlooTable } from './boschloo-table.ts';
import { worth } from './contrast.ts';
import { newcombe } from './difference.ts';
import { jointP } from './joint.ts';
import { wilson } from './proportion.ts';
import { isReadyShare } from './readiness.ts';
import { reachFor, seedsForOne, type Spread } from './spread.ts';
import { chiSquareTail, upperPoint, upperTail } from './tails.ts';
import { THRESHOLDS } from './thresholds.ts';

/** A trial before it is made: how many seeds in how many dishes on each side, and what else is tried beside. */
export interface Design {
  readonly treated: number;
  readonly untreated: number;
  /** Dishes of each side, about equal. */
  readonly dishes: { readonly treated: number; readonly untreated: number };
  /** Treatments beside the one untreated part, this one included; the others do nothing. */
  readonly treatments: number;
  /** Correlation of two seeds of one dish, whether they germinate: how much dishes are reckoned to differ. */
  readonly rho: number;
}

/** What the verdict makes of the numbers that germinate. */
export interface Findings {
  readonly design: Design;
  /**
   * The chance that it is "worth repeating", at a (untreated + 1) + b for a treated and b untreated seeds germinated.
   */
  readonly chances: Float64Array;
}

/** How sooner seed that germinated is tested takes this part of the error, see claim.ts. */
const SOONER_SHARE = 0.1;

/**
 * Sum of the cubes of the parts of the germinated seed that one look finds: a season looked at about weekly. Seed found
 * at one look has one rank. Common practice, no source.
 */
const TIES = 0.05;

/**
 * The chance of "worth repeating" for each outcome of a closed trial in which both sides were looked at on the same
 * days, treated seed that germinates comes as soon as untreated, and no seedling is weak. By the rules of the verdict:
 * more germinated (Boschloo's test), or ahead over the days of all the seed (ranks), with room for each other and for
 * other treatments, and with what dishes are allowed for.
 *
 * Two things are left to chance where the outcome is given: how the days of those that germinated fall to the sides (by
 * the normal curve, from the permutation mean and variance of the rank sum), and how far dishes of one side lie apart
 * (a chi-square variable times 1 + (size - 1) rho).
 */
export function findingsOf(design: Design): Findings {
  const { treated: n, untreated: m } = design;
  const chances = new Float64Array((n + 1) * (m + 1));
  if (Math.min(n, m) < THRESHOLDS.fewestSeeds.value) return { design, chances };
  const spread = spreadOf(design);
  const reaches = reachesOf(design, spread);
  const below = factorsBelow(spread, design.rho);
  const { p } = boschlooTable(n, m);
  for (let a = 1; a <= n; a++) {
    for (let b = 0; b <= m && a * m > b * n; b++) {
      const at = a * (m + 1) + b;
      const reach = reaches((a + b) / (n + m));
      const most = mostFactor(p[at]!, reach.share, spread, { a, n, b, m });
      chances[at] = below(most) > 1 - 1e-9 ? 1 : chanceOf({ a, n, b, m }, reach, most, below, spread);
    }
  }
  return { design, chances };
}

/** Deviates that the tests must reach, for a share of all the seed that germinated. */
interface Reach {
  readonly share: number;
  readonly days: number;
}

interface Outcome {
  readonly a: number;
  readonly n: number;
  readonly b: number;
  readonly m: number;
}

function spreadOf({ treated, untreated, dishes }: Design): Spread {
  const df = dishes.treated + dishes.untreated - 2;
  const size = (treated ** 2 / dishes.treated + untreated ** 2 / dishes.untreated) / (treated + untreated);
  return { factor: 1, df, size };
}

/**
 * Correlations of the two tests that are worked out, evenly by their arc cosine; a line is drawn between them. Two
 * tests that nearly agree make room for each other by about that arc.
 */
const STEPS = 12;

const ARC = Math.PI / 2;

function reachesOf({ treatments }: Design, spread: Spread): (share: number) => Reach {
  const level = (THRESHOLDS.level.value * (1 - SOONER_SHARE)) / treatments;
  const all = Array.from({ length: STEPS + 1 }, (_, i): Reach => {
    const p = alone(level, Math.cos((i * ARC) / STEPS));
    return { share: reachFor(p, spread, 'share'), days: reachFor(p, spread, 'days') };
  });
  return share => {
    const at = Math.min(STEPS - 1e-9, (STEPS * Math.acos(Math.min(1, correlationAt(share)))) / ARC);
    const [low, high, part] = [all[Math.floor(at)]!, all[Math.floor(at) + 1]!, at % 1];
    return { share: low.share + part * (high.share - low.share), days: low.days + part * (high.days - low.days) };
  };
}

/** The p-value of one test that comes to `level` together with another one. */
function alone(level: number, correlation: number): number {
  let [low, high] = [level / 2, level];
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (jointP(middle, [correlation]) < level) low = middle;
    else high = middle;
  }
  return low;
}

/** Of the ranks of all the seed with whether it germinated; the share is above 0. */
function correlationAt(share: number): number {
  return Math.sqrt((share * (1 - share)) / 4 / rankVariance(share));
}

/** Of the mid-ranks of all the seed, from 0 to 1: those that one look found, and those that never came, share one. */
function rankVariance(share: number): number {
  return (1 - (1 - share) ** 3 - TIES * share ** 3) / 12;
}

/**
 * The greatest spread of the dishes at which a p-value still shows more, and the interval of the difference lies above
 * 0; 0 where there is none.
 */
function mostFactor(p: number, reach: number, spread: Spread, { a, n, b, m }: Outcome): number {
  const deviate = p < 0.5 ? Math.max(0, upperPoint(p)) : 0;
  const isAbove = (factor: number): boolean => {
    const fewer = seedsForOne({ ...spread, factor });
    return newcombe(worth({ x: a, n }, fewer), worth({ x: b, n: m }, fewer)).low > 0;
  };
  const most = (deviate / reach) ** 2;
  if (most < 1 || !isAbove(1)) return 0;
  if (spread.df === 0) return Infinity;
  if (isAbove(most)) return most;
  let [low, high] = [1, most];
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2;
    if (isAbove(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Midpoints of so many equal parts of the normal curve. */
const POINTS = Array.from({ length: 15 }, (_, i) => upperPoint((i + 0.5) / 15));

function chanceOf(
  { a, n, b, m }: Outcome, { days }: Reach, most: number, below: (factor: number) => number, spread: Spread,
): number {
  const [all, up] = [n + m, a + b];
  const share = up / all;
  const fewer = seedsForOne(spread);
  const isLoss = newcombe(worth({ x: a, n }, fewer), worth({ x: b, n: m },
    fewer)).low < -THRESHOLDS.toleratedLoss.value;
  // Untreated seed that germinates well without it: then only more seed counts.
  if (isLoss || isReadyShare({ x: b, n: m, low: wilson(b, m).low })) return below(most);
  const root = Math.sqrt((n * m * rankVariance(share)) / (all - 1));
  const mean = (a - n * share) / 2 / root;
  const deviation = up > 1 ? Math.sqrt((a * b * share ** 2 * (1 - TIES)) / 12 / (up - 1)) / root : 0;
  if (spread.df === 0) return most > 0 ? 1 : deviation > 0 ? upperTail((days - mean) / deviation) : Number(mean >=
    days);
  const sum = POINTS.reduce((total, z) => total + below(Math.max(most, (Math.max(0,
    mean + deviation * z) / days) ** 2)), 0);
  return sum / POINTS.length;
}

/** Steps of the table below, from 1 up to the greatest factor that it tells from infinity. */
const [FACTOR_STEP, MOST_FACTOR] = [0.02, 40];

/** The chance that dishes lie apart by no more than a factor. */
function factorsBelow({ df, size }: Spread, rho: number): (factor: number) => number {
  if (df === 0) return factor => (factor >= 1 ? 1 : 0);
  const variance = 1 + Math.max(0, size - 1) * rho;
  const table = new Float64Array(Math.round((MOST_FACTOR - 1) / FACTOR_STEP) + 1)
    .map((_, i) => 1 - chiSquareTail((df * (1 + i * FACTOR_STEP)) / variance, df));
  return factor => (factor < 1 ? 0 : table[Math.min(table.length - 1, Math.floor((factor - 1) / FACTOR_STEP))]!);
}
