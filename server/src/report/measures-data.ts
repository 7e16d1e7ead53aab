/** The measures of a batch as plain data, with the steps that a curve is drawn of. */
import type { BatchMeasures, GerminationTimes } from '../measures/batch.ts';
import type { Course } from '../measures/course.ts';
import type { EpicotylDelay } from '../measures/epicotyl.ts';
import type { KaplanMeier } from '../measures/kaplan-meier.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { limitOf, numberData, shareData, timeData } from './numbers-data.ts';

/** Totals after each check, in days from day 0. */
export function courseData(course: Course | Undefined): object {
  return isUndefined(course) ? course : { seeds: course.sown, closed: course.closed ?? false, checks: course.checks };
}

export function measuresData(measures: BatchMeasures | Undefined): object {
  if (isUndefined(measures)) return measures;
  const { germination, seedlings, rotted, span, t50Coolbear, ofGerminated, ofSown, germinationValue, medianLimits } =
    measures;
  return {
    germination: recordData(germination, shareData),
    seedlings: recordData(seedlings, shareData),
    rotted: shareData(rotted),
    span: isUndefined(span) ? span : { ...span, after: numberData(span.after), lower: limitOf(span.after),
      upper: span.first },
    t50Coolbear: timeData(t50Coolbear),
    ofGerminated: timesData(ofGerminated),
    ofSown: timesData(ofSown),
    meanTime: {
      ...recordData(measures.meanTime, numberData), lower: limitOf(measures.meanTime.earliest), upper: limitOf(
        measures.meanTime.mean),
    },
    speed: recordData(measures.speed, numberData),
    germinationValue,
    uniformity: recordData(measures.uniformity, numberData),
    epicotyl: epicotylData(measures.epicotyl),
    kaplanMeier: kaplanMeierData(measures.kaplanMeier),
    medianLimits: isUndefined(medianLimits)
      ? medianLimits : { lower: medianLimits.after ?? null, upper: medianLimits.by ?? null },
  };
}

function recordData<Key extends string, Value>(
  record: Readonly<Record<Key, Value>>, data: (value: Value) => unknown,
): Record<string, unknown> {
  return Object.fromEntries(Object.entries<Value>(record).map(([name, value]) => [name, data(value)]));
}

function timesData({ t10, t50, t90 }: GerminationTimes): object {
  return { t10: timeData(t10), t50: timeData(t50), t90: timeData(t90) };
}

function epicotylData(delay: EpicotylDelay | Undefined): object {
  if (isUndefined(delay)) return delay;
  const { leafed, waiting, mean, shortest, longest } = delay;
  return { leafed, waiting, mean, shortest: numberData(shortest), longest: numberData(longest) };
}

function kaplanMeierData(estimate: KaplanMeier | Undefined): object {
  if (isUndefined(estimate)) return estimate;
  const { steps, median, medianLow, medianHigh } = estimate;
  return {
    steps: steps.map(step => ({ ...step, error: numberData(step.error) })),
    median: numberData(median), medianLow: numberData(medianLow), medianHigh: numberData(medianHigh),
  };
}
