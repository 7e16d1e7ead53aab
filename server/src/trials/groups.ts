/** The batches of a lot, put together by what was done to them. */
import type { Bound } from '../journal/estimates.ts';
import { isDividedWhole } from '../journal/given-out.ts';
import type { Batch, BatchEvent, Lot } from '../journal/life.ts';
import { faultOf, type Course } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import { commonAge } from '../measures/looks.ts';
import type { Day } from '../model/day.ts';
import { conditionsOf, differencesOf, type Conditions } from './conditions.ts';
import { courseBefore, courseOf, dayZeroOf, eventsBefore, isPick } from './course.ts';
import { isDropsOnSeed, wettedBy } from './drops-on-seed.ts';
import type { Faults } from './faults.ts';
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
  /** The day of a soak of watched seed from which on it is looked at. */
  readonly since?: Day;
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
export function groupsOf(lot: Lot, faulty: Faults, bounds?: Bounds): Groups {
  const found: TrialBatch[] = [];
  const leftOut: LeftOut[] = [];
  for (const batch of lot.batches.values()) {
    if (!isTried(batch)) continue;
    const part = faulty.get(batch) ?? trialBatchOf(batch, bounds);
    if (isUndefined(part)) leftOut.push({ batch, why: part });
    else found.push(part);
  }
  const isTreated = ({ treatment }: Group) => Number(treatment.length > 0);
  const parts = found.map(part => withItsRot(part, found));
  return { groups: inGroups(parts).sort((a, b) => isTreated(a) - isTreated(b)), leftOut };
}

/** Batches put together with their replicates, in their order. */
export function inGroups(parts: readonly TrialBatch[]): Group[] {
  const groups: { treatment: Treatment; batches: TrialBatch[] }[] = [];
  for (const part of parts) {
    const group = groups.find(({ batches }) => batches.every(other => isReplicate(other, part)));
    if (group) group.batches.push(part);
    else groups.push({ treatment: part.treatment, batches: [part] });
  }
  return groups;
}

/** Seed that is told by the parts that it was given to, or that nobody did anything with, is no part of a trial. */
function isTried(batch: Batch): boolean {
  return !isDividedWhole(batch) && batch.events.some(({ type }) => type === 'sow' || type === 'count' || type === 'cut');
}

function trialBatchOf(batch: Batch, bounds: Bounds | undefined): TrialBatch | Undefined {
  const unknown = batch.soaks.flatMap(({ doses }) => doses).find(({ agent }) => !agent);
  if (unknown) return undefinedBecause(`what it was soaked in is unknown (${unknown.fact.name.text})`);
  const wetted = dropsBeforeWatch(batch);
  if (wetted) return wettedBy(wetted);
  const endedBy = endOf(batch);
  const events = eventsBefore(batch, endedBy);
  const later = new Set(batch.events.slice(events.length).map(({ entry }) => entry.line));
  const treatment = treatmentOf(batch, batch.soaks.filter(({ entry }) => !later.has(entry.line)));
  const bound = treatment.length > 0 ? bounds?.treated : bounds?.untreated;
  const course = endedBy ? courseBefore(batch, endedBy, bound) : courseOf(batch, bound);
  const fault = isUndefined(course) ? course : faultOf(course);
  if (isUndefined(course) || fault) return fault!;
  const conditions = conditionsOf(batch, dayZeroOf(batch, endedBy)!, events);
  return { batch, course: withItsStart(batch, course, conditions), endedBy, conditions, treatment };
}

/** Seed that was split off from what had begun to germinate had not itself: the day of the split is a look at it. */
function withItsStart(batch: Batch, course: Course, { restOf, dayZero }: Conditions): Course {
  const { made } = batch;
  const isRest = restOf !== undefined || rotBefore(batch) > 0;
  const day = isRest && made.moment ? made.moment.day - dayZero : undefined;
  const first = course.checks[0];
  return day === undefined || !first || first.day <= day
    ? course
    : { ...course, checks: [{ day, germinated: 0 }, ...course.checks] };
}

/** How much had rotted in the batch that it is a part of, if that was divided whole. */
function rotBefore({ parent }: Batch): number {
  return parent && isDividedWhole(parent) ? parent.totals.rotted : 0;
}

/**
 * Seed that rotted before a batch was divided did not germinate, and counts with that of its parts. Where these were
 * treated apart since, it is of none of them.
 */
function withItsRot(part: TrialBatch, found: readonly TrialBatch[]): TrialBatch {
  const { batch, course, treatment } = part;
  const { parent } = batch;
  const rot = rotBefore(batch);
  const isAlike = found.every(other => other.batch.parent !== parent || isSameTreatment(other.treatment, treatment));
  if (!parent || rot === 0 || !isAlike) return part;
  const of = parent.children.length;
  const share = Math.floor((rot + of - 1 - parent.children.indexOf(batch)) / of);
  const checks = course.checks.map(check => ({ ...check, rotted: (check.rotted ?? 0) + share }));
  return { ...part, course: { ...course, sown: course.sown + share, checks } };
}

/** Drops that can have reached the seed of a batch before it was watched. */
function dropsBeforeWatch(batch: Batch): BatchEvent | undefined {
  const watch = firstWatch(batch);
  const before = watch < 0 ? batch.events : batch.events.slice(0, watch);
  return [...batch.inherited, ...before].find(event => isDropsOnSeed(batch, event));
}

/**
 * What ends the part of a batch in a trial: a treatment of seed that had been watched before, which came too late for
 * what had germinated by then, or a `split` that picked out seed between two counts.
 */
function endOf(batch: Batch): BatchEvent | undefined {
  const { events } = batch;
  return events.find((event, i) => isWatchedSoak(batch, event) || isDropsOnSeed(batch, event)
    || (isPick(event, events) && events.slice(i).some(({ type }) => type === 'count')));
}

/** Whether an event is the treatment of seed that had been watched before. */
export function isWatchedSoak(batch: Batch, event: BatchEvent): event is BatchEvent & { readonly type: 'soak' } {
  if (event.type !== 'soak' || !isActiveSoak(event.soak)) return false;
  const watch = firstWatch(batch);
  return watch >= 0 && batch.events.includes(event, watch);
}

const watches = new WeakMap<Batch, number>();

/** The index of the first look that is a watch; -1 without one. Kept, since it is asked for at each soak. */
function firstWatch(batch: Batch): number {
  const known = watches.get(batch);
  if (known !== undefined) return known;
  const { events, sowing } = batch;
  let isSown = sowing !== undefined && !events.some(({ entry }) => entry.line === sowing.line);
  const watch = events.findIndex(event => {
    if (event.type === 'sow') isSown = true;
    // Counts on the way through the cold, before it is sown, find nothing as a rule and are no watch.
    return event.type === 'count' && (isSown || event.after.germinated > 0);
  });
  watches.set(batch, watch);
  return watch;
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
