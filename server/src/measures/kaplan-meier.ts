import { seedsOf, type LifeTable } from './life-table.ts';
import { isUndefined, measured, undefinedBecause, type Interval, type Measured, type Undefined } from './measured.ts';
import { CONFIDENCE } from './proportion.ts';
import { deviate } from './tails.ts';

/** The estimate from one day with germination to the next. */
export interface Survival {
  readonly day: number;
  readonly atRisk: number;
  readonly germinated: number;
  /** Share that has not germinated yet, S. */
  readonly ungerminated: number;
  /** Greenwood's standard error of S; undefined when nothing is left. */
  readonly error: Measured;
  /** log(-log S) interval of S; undefined when nothing is left. */
  readonly interval: Interval | Undefined;
}

export interface KaplanMeier {
  /** One entry for each day with germination: the steps of a curve that starts at 1. */
  readonly steps: readonly Survival[];
  /** The day by which half of the seed germinated; undefined when it never did. */
  readonly median: Measured;
  /** The interval of the median, each limit for itself. */
  readonly medianLow: Measured;
  readonly medianHigh: Measured;
}

/** S at a half, but for rounding: a product such as 0.7 * 5 / 7 misses it by the last digit. */
const AT_HALF = 1e-9;

/**
 * The product-limit estimate of the share not germinated, from the exits of a sample.
 *
 * S = prod(1 - d / n); Greenwood: SE = S sqrt(sum d / (n (n - d))); interval exp(-exp(log(-log S) +/- z SE /
 * (S |log S|))). Kaplan & Meier 1958, J Am Stat Assoc 53:457-481; Greenwood 1926 (both from memory). Median
 * and its limits as R's `survfit` with `conf.type = "log-log"`: the first day with S, or a limit of S, at or
 * below a half, and half way to the next step where it is exactly a half.
 *
 * @example
 * kaplanMeier([{ day: 4, germinated: 3, censored: 0 }, { day: 9, germinated: 0, censored: 1 }]).steps[0]
 * // { day: 4, atRisk: 4, germinated: 3, ungerminated: 0.25, error: { value: 0.2165... }, interval: ... }
 */
export function kaplanMeier(table: LifeTable, confidence = CONFIDENCE): KaplanMeier {
  const z = deviate(confidence);
  const steps: Survival[] = [];
  let atRisk = seedsOf(table);
  let ungerminated = 1;
  let greenwood = 0;
  for (const { day, germinated, censored } of table) {
    if (germinated > 0) {
      ungerminated *= 1 - germinated / atRisk;
      greenwood += germinated / (atRisk * (atRisk - germinated));
      steps.push({ day, atRisk, germinated, ungerminated, ...precision(ungerminated, greenwood, z) });
    }
    atRisk -= germinated + censored;
  }
  return {
    steps,
    median: halfDay(steps, step => step.ungerminated),
    medianLow: halfDay(steps, step => limit(step, 'low')),
    medianHigh: halfDay(steps, step => limit(step, 'high')),
  };
}

function precision(s: number, greenwood: number, z: number): Pick<Survival, 'error' | 'interval'> {
  if (s === 0) {
    const error = undefinedBecause('no seed is left ungerminated');
    return { error, interval: error };
  }
  const width = (z * Math.sqrt(greenwood)) / Math.log(s);
  return {
    error: measured(s * Math.sqrt(greenwood)),
    interval: { low: s ** Math.exp(-width), high: s ** Math.exp(width) },
  };
}

function limit({ interval }: Survival, end: keyof Interval): number | undefined {
  return isUndefined(interval) ? undefined : interval[end];
}

function halfDay(steps: readonly Survival[], share: (step: Survival) => number | undefined): Measured {
  const i = steps.findIndex(step => (share(step) ?? 1) <= 0.5 + AT_HALF);
  const reached = steps[i];
  if (!reached) return undefinedBecause('half of the seed never germinated');
  const exact = Math.abs((share(reached) ?? 0) - 0.5) <= AT_HALF;
  const next = steps[i + 1];
  return measured(exact && next ? (reached.day + next.day) / 2 : reached.day);
}
