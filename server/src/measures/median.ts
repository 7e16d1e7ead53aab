import { dayFaultOf, stepsOf, type Course } from './course.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import { lifeTable } from './life-table.ts';
import { isUndefined, undefinedBecause, type Undefined } from './measured.ts';

/** Looks between which a day lies; undefined where there was none before, or none that it must have come by. */
export interface LookLimits {
  readonly after: number | undefined;
  readonly by: number | undefined;
}

/**
 * The 95 % interval of the day on which half of the seed sown is up, of seed like this: from the look before the lower
 * limit of the Kaplan-Meier median, since seed came up before the look that found it, to its upper limit.
 * tests/simulate holds how often it takes in the true day.
 */
export function medianLimits(course: Course): LookLimits | Undefined {
  const fault = dayFaultOf(course);
  if (fault) return fault;
  const { medianLow, medianHigh } = kaplanMeier(lifeTable([course]));
  if (isUndefined(medianLow)) return undefinedBecause('half of the seed never germinated');
  const before = stepsOf(course).findLast(({ day }) => day < medianLow.value)?.day;
  return { after: before, by: isUndefined(medianHigh) ? undefined : medianHigh.value };
}
