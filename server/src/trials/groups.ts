/** The batches of a lot, put together by what was done to them. */
import type { Bound } from '../journal/estimates.ts';
import { countsOf, isGivenOut, type Batch, type BatchEvent, type Lot } from '../journal/life.ts';
import { faultOf, type Course } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import { commonAge } from '../measures/looks.ts';
import { conditionsOf, differencesOf, type Conditions } from './conditions.ts';
import { courseBefore, courseOf, dayZeroOf, isPick } from './course.ts';
import { isActiveSoak, isSameTreatment, treatmentOf, type Treatment } from './treatment.ts';

export interface TrialBatch {
  readonly batch: Batch;
  readonly treatment: Treatment;
  readonly conditions: Conditions;
  readonly course: Course;
  /** What ended its part in the trial before its own end; counts since then are left out. */
  readonly endedBy: BatchEvent | undefined;
}

/** Batches of one lot with the same treatment under the same conditions: replicates of each other. */
export interface Group {
  readonly treatment: Treatment;
  readonly batches: readonly TrialBatch[];
}

export interface LeftOut {
  readonly batch: Batch;
  readonly why: Undefined;
}

export interface Groups {
  readonly groups: readonly Group[];
  /** Batches that something was done to but that no measure can be taken of, with the reason. */
  readonly leftOut: readonly LeftOut[];
}

/** Which end of an estimate of seeds is taken for their number, on either side. */
export interface Bounds {
  readonly treated: Bound;
  readonly untreated: Bound;
}

/** The groups of a lot, untreated ones first, then in the order in which the journal names their first batch. */
export function groupsOf(lot: Lot, bounds?: Bounds): Groups {
  const groups: { treatment: Treatment; batches: TrialBatch[] }[] = [];
  const leftOut: LeftOut[] = [];
  for (const batch of lot.batches.values()) {
    if (!isTried(batch)) continue;
    const found = trialBatchOf(batch, bounds);
    if (isUndefined(found)) {
      leftOut.push({ batch, why: found });
      continue;
    }
    const group = groups.find(({ batches }) => batches.every(other => isReplicate(other, found)));
    if (group) group.batches.push(found);
    else groups.push({ treatment: found.treatment, batches: [found] });
  }
  const isTreated = ({ treatment }: Group) => Number(treatment.length > 0);
  return { groups: groups.sort((a, b) => isTreated(a) - isTreated(b)), leftOut };
}

/** Seed that was only given out, or that nobody did anything with, is no part of a trial. */
function isTried(batch: Batch): boolean {
  if (isGivenOut(batch) && countsOf(batch).length === 0) return false;
  return batch.events.some(({ type }) => type === 'sow' || type === 'count' || type === 'cut');
}

function trialBatchOf(batch: Batch, bounds: Bounds | undefined): TrialBatch | Undefined {
  if (batch.unread) return undefinedBecause('a record of it, or of the seed it was split from, has an error');
  const unknown = batch.soaks.flatMap(({ doses }) => doses).find(({ agent }) => !agent);
  if (unknown) return undefinedBecause(`what it was soaked in is unknown (${unknown.fact.name.text})`);
  const endedBy = endOf(batch);
  const events = endedBy ? batch.events.slice(0, batch.events.indexOf(endedBy)) : batch.events;
  const later = new Set(batch.events.slice(events.length).map(({ entry }) => entry.line));
  const treatment = treatmentOf(batch, batch.soaks.filter(({ entry }) => !later.has(entry.line)));
  const bound = treatment.length > 0 ? bounds?.treated : bounds?.untreated;
  const course = endedBy ? courseBefore(batch, endedBy, bound) : courseOf(batch, bound);
  const fault = isUndefined(course) ? course : faultOf(course);
  if (isUndefined(course) || fault) return fault!;
  return {
    batch, course, endedBy, treatment,
    conditions: conditionsOf(batch, dayZeroOf(batch, endedBy)!, events),
  };
}

/**
 * What ends the part of a batch in a trial: a treatment of seed that had been watched before, which came too late for
 * what had germinated by then, or a `split` that picked out seed between two counts.
 */
function endOf({ events, sowing }: Batch): BatchEvent | undefined {
  let isSown = sowing !== undefined && !events.some(({ entry }) => entry.line === sowing.line);
  let isWatched = false;
  for (const [i, event] of events.entries()) {
    if (event.type === 'sow') isSown = true;
    // Counts on the way through the cold, before it is sown, find nothing as a rule and are no watch.
    if (event.type === 'count') isWatched ||= isSown || event.after.germinated > 0;
    if (isWatched && event.type === 'soak' && isActiveSoak(event.soak)) return event;
    if (isPick(event, events) && events.slice(i).some(({ type }) => type === 'count')) return event;
  }
  return undefined;
}

function isReplicate(a: TrialBatch, b: TrialBatch): boolean {
  if (!isSameTreatment(a.treatment, b.treatment) || a.conditions.isWet !== b.conditions.isWet) return false;
  if (a.conditions.hasDrops !== b.conditions.hasDrops) return false;
  const day = commonAge([a.course, b.course]);
  return differencesOf(a.conditions, b.conditions, day).differing.length === 0;
}

export function coursesOf({ batches }: Group): Course[] {
  return batches.map(({ course }) => course);
}
