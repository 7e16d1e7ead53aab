import { seedsCounted, stepsAfterOrigin, type Course, type Step } from './course.ts';
import { isUndefined, measured, type Measured } from './measured.ts';

/** Indices that reward early germination. Percentages are of the seed sown less lost. */
export interface Speed {
  /** sum(n / t) of new germinants, seeds per day. Maguire 1962, Crop Sci 2:176-177 (from memory). */
  readonly maguire: Measured;
  /** The same of new percentages, % per day. */
  readonly maguirePercent: Measured;
  /**
   * Sum of the cumulative percentages at all the checks, %. Timson 1965, Nature 207:216 (from memory), who
   * made ten daily checks: comparable between courses with the same days of check only.
   */
  readonly timson: Measured;
  /** That sum over the days of the test. Khan & Ungar 1984, Am J Bot 71:481-489 (from memory). */
  readonly timsonMean: Measured;
  /**
   * Area under the cumulative percentages from day 0 to the last check, joined by straight lines, % days.
   * Hardly depends on the days of check; common practice, no source.
   */
  readonly area: Measured;
  /**
   * sum((T + 1 - t) n) for a test of T days, seed days: a seed counts for each day that it was up.
   * Definitions vary between authors; no one source.
   */
  readonly dayWeighted: Measured;
}

/**
 * The indices of a course; undefined when nothing germinated, or when seed had germinated by day 0.
 *
 * @example
 * speed({ sown: 10, checks: [{ day: 4, germinated: 1 }, { day: 6, germinated: 4 }] })
 * // maguire 0.75, timson 50, timsonMean 8.33..., area 70, dayWeighted 6
 */
export function speed(course: Course): Speed {
  const steps = stepsAfterOrigin(course);
  if (isUndefined(steps)) return allOf(steps);
  const end = steps.at(-1)!.day;
  const percent = 100 / seedsCounted(course);
  const maguire = sumOf(steps, ({ fresh, day }) => (fresh > 0 ? fresh / day : 0));
  const timson = percent * sumOf(steps, ({ germinated }) => germinated);
  return {
    maguire: measured(maguire),
    maguirePercent: measured(percent * maguire),
    timson: measured(timson),
    timsonMean: measured(timson / end),
    area: measured(percent * areaUnder(steps)),
    dayWeighted: measured(sumOf(steps, ({ fresh, day }) => (end + 1 - day) * fresh)),
  };
}

function sumOf(steps: readonly Step[], value: (step: Step) => number): number {
  return steps.reduce((sum, step) => sum + value(step), 0);
}

/** Seed days under the curve. Before the first seed it lies at 0, so checks by day 0 add nothing. */
function areaUnder(steps: readonly Step[]): number {
  let [area, day, germinated] = [0, 0, 0];
  for (const step of steps.filter(({ day: d }) => d > 0)) {
    area += ((germinated + step.germinated) / 2) * (step.day - day);
    ({ day, germinated } = step);
  }
  return area;
}

function allOf(reason: Measured): Speed {
  return {
    maguire: reason,
    maguirePercent: reason,
    timson: reason,
    timsonMean: reason,
    area: reason,
    dayWeighted: reason,
  };
}
