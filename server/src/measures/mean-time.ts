import { germinatedSteps, type Course, type Step } from './course.ts';
import { derived, isUndefined, measured, undefinedBecause, type Measured } from './measured.ts';

/**
 * The mean time to germination and what is derived from it. Every seed counts on the day of the check that
 * found it, which is late: it germinated after the check before. `earliest` is the mean if each had
 * germinated right after the check before, so the true mean lies between `earliest` and `mean`.
 */
export interface MeanTime {
  /** MGT = sum(n t) / sum(n), days. Ellis & Roberts 1981, Seed Sci Technol 9:373-409 (from memory). */
  readonly mean: Measured;
  /** The lower bound of the mean, days. */
  readonly earliest: Measured;
  /** sum n (t - MGT)^2 / (G - 1), days squared. Ranal & Santana 2006, Rev Bras Bot 29:1-11 (from memory). */
  readonly variance: Measured;
  /** Square root of the variance, days. */
  readonly standardDeviation: Measured;
  /** 100 s / MGT, %. Ranal & Santana 2006 (from memory). */
  readonly coefficientOfVariation: Measured;
  /** 1 / MGT, per day. Labouriau & Valadares 1976 (from memory). */
  readonly rate: Measured;
  /** 100 / MGT, % per day. Kotowski 1926, Proc Am Soc Hort Sci 23:176-184 (from memory). */
  readonly velocity: Measured;
}

/**
 * The mean time of a course, of the seed that germinated.
 *
 * @example
 * meanTime({ sown: 10, checks: [{ day: 4, germinated: 1 }, { day: 6, germinated: 4 }] })
 * // mean 5.5, earliest 3, variance 1, rate 0.1818...
 */
export function meanTime(course: Course): MeanTime {
  const steps = germinatedSteps(course);
  if (isUndefined(steps)) return allOf(steps);
  const found = steps.filter(step => step.fresh > 0);
  const seeds = found.at(-1)!.germinated;
  const mean = sumOf(found, step => step.day) / seeds;
  const spread = sumOf(found, step => (step.day - mean) ** 2);
  const variance = seeds < 2
    ? undefinedBecause('a single seed germinated')
    : measured(spread / (seeds - 1));
  const standardDeviation = derived(variance, Math.sqrt);
  const positive = mean > 0 ? undefined : undefinedBecause('the mean is not after day 0');
  return {
    mean: measured(mean),
    earliest: earliestMean(found, seeds),
    variance,
    standardDeviation,
    coefficientOfVariation: positive ?? derived(standardDeviation, s => (100 * s) / mean),
    rate: positive ?? measured(1 / mean),
    velocity: positive ?? measured(100 / mean),
  };
}

function sumOf(found: readonly Step[], value: (step: Step) => number): number {
  return found.reduce((sum, step) => sum + step.fresh * value(step), 0);
}

function earliestMean(found: readonly Step[], seeds: number): Measured {
  let sum = 0;
  for (const { fresh, since } of found) {
    if (isUndefined(since)) return since;
    sum += fresh * since.value;
  }
  return measured(sum / seeds);
}

function allOf(reason: Measured): MeanTime {
  return {
    mean: reason,
    earliest: reason,
    variance: reason,
    standardDeviation: reason,
    coefficientOfVariation: reason,
    rate: reason,
    velocity: reason,
  };
}
