import { isPassed, plannedStages, type PlannedStage } from '../calendar/regimes.ts';
import { whereNow } from '../calendar/places.ts';
import { pottedIn, standingOf } from '../calendar/standing.ts';
import { staysOf } from '../calendar/stays.ts';
import {
  countsOf, type Batch, type CutEvent, type LeaveEvent, type Lot, type Origin, type Totals,
} from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { SeedRange } from '../model/estimate.ts';
import { measureBatch, type BatchMeasures } from '../measures/batch.ts';
import type { Course } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Interval, type Undefined } from '../measures/measured.ts';
import { proportion, type Proportion } from '../measures/proportion.ts';
import { germinatedOf, germinationDays, type GerminationDays } from '../words/germination.ts';
import { shareLimits, wilsonLimits } from '../words/shares.ts';
import { treatmentText } from '../words/treatment.ts';
import { courseOf } from '../trials/course.ts';
import { stateOf, type BatchState } from '../words/state.ts';

/** What a report says of a batch. */
export interface BatchReport {
  readonly batch: Batch;
  /** In words; batches with the same words had the same treatment. */
  readonly treatment: string;
  /** Stages of its regime that nobody wrote down; `passed`: their time is over. */
  readonly plannedStages: readonly (PlannedStage & { readonly passed: boolean })[];
  /** Totals of the counts; undefined where it was never counted. */
  readonly totals: Totals | undefined;
  /** Germinated seed as a share of the seed sown less lost, or of the seed there less lost where none was sown. */
  readonly germination: (Proportion & { readonly of: string }) | Undefined;
  /** The same of seeds that were estimated: every share that they allow. */
  readonly germinationRange: GerminationRange | undefined;
  /** In days from day 0. */
  readonly days: GerminationDays | Undefined;
  readonly origin: Origin | undefined;
  readonly cut: CutEvent['classes'] | undefined;
  readonly state: BatchState;
  /** What left of it by now while the others stayed; what left before it was split off is told of its parent. */
  readonly leavings: readonly LeaveEvent[];
  /** Seedlings pricked out by now. */
  readonly potted: number;
  /** Where it lies. */
  readonly places: readonly string[];
  /** What its counts are measured by; undefined with the reason where they are not to be trusted. */
  readonly course: Course | Undefined;
  readonly measures: BatchMeasures | Undefined;
}

/** x of n, of as many seeds as an estimate allows; shares from 0 to 1. */
interface GerminationRange {
  readonly x: number;
  readonly n: SeedRange;
  /** What n is. */
  readonly of: string;
  readonly share: Interval;
  /** What Wilson’s 95 % intervals of all of them take in. */
  readonly wilson: Interval;
}

export function reportBatch(lot: Lot, batch: Batch, now: Moment): BatchReport {
  const course = courseOf(batch);
  return {
    batch,
    treatment: treatmentText(batch, now),
    plannedStages: plannedStages([...batch.inherited, ...batch.events])
      .map(stage => ({ ...stage, passed: isPassed(stage, now.day) })),
    totals: countsOf(batch).length > 0 ? batch.totals : undefined,
    germination: germinationOf(batch),
    germinationRange: germinationRangeOf(batch),
    days: germinationDays(batch),
    origin: batch.origin,
    cut: batch.cut?.classes,
    state: stateOf(batch, now),
    leavings: leavingsOf(batch, now),
    potted: pottedIn(standingOf(batch, now).past),
    places: whereNow(staysOf(lot), batch.path, now),
    course,
    measures: isUndefined(course) ? course : measureBatch(course),
  };
}

function germinationOf(batch: Batch): BatchReport['germination'] {
  const germinated = germinatedOf(batch);
  if (isUndefined(germinated)) return germinated;
  if (typeof germinated.n !== 'number') return undefinedBecause('the seeds were estimated, so only a range is known');
  const share = proportion(germinated.x, germinated.n);
  return isUndefined(share) ? share : { ...share, of: germinated.of };
}

function germinationRangeOf(batch: Batch): GerminationRange | undefined {
  const germinated = germinatedOf(batch);
  if (isUndefined(germinated) || typeof germinated.n === 'number') return undefined;
  const { x, n, of } = germinated;
  return { x, n, of, share: shareLimits(x, n), wilson: wilsonLimits(x, n) };
}

/** What left of a batch itself by now while the others stayed. */
export function leavingsOf(batch: Batch, now: Moment): LeaveEvent[] {
  return standingOf(batch, now).past.filter((event): event is LeaveEvent => event.type === 'leave' && event.batch === batch);
}
