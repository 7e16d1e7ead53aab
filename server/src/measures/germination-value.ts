import { seedsCounted, stepsAfterOrigin, type Course } from './course.ts';
import { isUndefined, type Undefined } from './measured.ts';

/**
 * Czabator's germination value and its parts. Percentages are of the seed sown less lost. Czabator 1962,
 * Forest Sci 8:386-396 (from memory). Sources differ in the days that the mean daily germination divides by,
 * which can double the value: both are given.
 */
export interface GerminationValue {
  /**
   * PV: the greatest cumulative percentage / day of any check, % per day, and its day. With sparse checks a
   * lower bound of the peak that daily checks would have found.
   */
  readonly peak: { readonly value: number; readonly day: number };
  /** MDG and GV with the days from day 0 to the last check. */
  readonly toLastCheck: MeanDaily;
  /** MDG and GV with the days from day 0 to the check that found the last germinated seed. */
  readonly toLastGermination: MeanDaily;
}

export interface MeanDaily {
  readonly days: number;
  /** MDG: final percentage / days, % per day. */
  readonly daily: number;
  /** GV = PV x MDG, (% per day) squared. */
  readonly value: number;
}

/**
 * The germination value of a course; undefined when nothing germinated, or when seed had germinated by day 0.
 *
 * @example
 * germinationValue({ sown: 10, checks: [{ day: 4, germinated: 4 }, { day: 8, germinated: 4 }] })
 * // peak { value: 10, day: 4 }, toLastCheck { days: 8, daily: 5, value: 50 },
 * // toLastGermination { days: 4, daily: 10, value: 100 }
 */
export function germinationValue(course: Course): GerminationValue | Undefined {
  const steps = stepsAfterOrigin(course);
  if (isUndefined(steps)) return steps;
  const percent = 100 / seedsCounted(course);
  const peak = { value: 0, day: 0 };
  for (const { day, germinated } of steps) {
    const value = (percent * germinated) / day;
    if (value > peak.value) Object.assign(peak, { value, day });
  }
  const end = steps.at(-1)!;
  const meanDaily = (days: number): MeanDaily => {
    const daily = (percent * end.germinated) / days;
    return { days, daily, value: peak.value * daily };
  };
  return {
    peak,
    toLastCheck: meanDaily(end.day),
    toLastGermination: meanDaily(steps.findLast(step => step.fresh > 0)!.day),
  };
}
