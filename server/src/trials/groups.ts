/** The batches of a lot, put together by what was done to them. */
import type { Batch, Lot } from '../journal/life.ts';
import type { Course } from '../measures/course.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { courseOf } from './course.ts';
import { conditionsOf, treatmentOf, type Conditions, type Treatment } from './treatment.ts';

export interface TrialBatch {
  readonly batch: Batch;
  readonly course: Course;
}

/** Batches of one lot with the same treatment under the same conditions: replicates of each other. */
export interface Group {
  readonly treatment: Treatment;
  readonly conditions: Conditions;
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

/** The groups of a lot, untreated ones first, then in the order in which the journal names their first batch. */
export function groupsOf(lot: Lot): Groups {
  const groups = new Map<string, { treatment: Treatment; conditions: Conditions; batches: TrialBatch[] }>();
  const leftOut: LeftOut[] = [];
  for (const batch of lot.batches.values()) {
    if (!batch.events.some(({ type }) => type === 'sow' || type === 'count')) continue;
    const course = courseOf(batch);
    if (isUndefined(course)) {
      leftOut.push({ batch, why: course });
      continue;
    }
    const treatment = treatmentOf(batch);
    const conditions = conditionsOf(batch);
    const key = JSON.stringify([treatment.key, conditions]);
    const group = groups.get(key) ?? { treatment, conditions, batches: [] };
    group.batches.push({ batch, course });
    groups.set(key, group);
  }
  const isTreated = ({ treatment }: Group) => Number(treatment.doses.length > 0);
  return { groups: [...groups.values()].sort((a, b) => isTreated(a) - isTreated(b)), leftOut };
}

export function coursesOf({ batches }: Group): Course[] {
  return batches.map(({ course }) => course);
}

/** Sowing more days apart than this is a difference of its own; a soak puts the treated part a day or two later. */
const SAME_SOWING_DAYS = 3;

const named: readonly (readonly [keyof Conditions, string])[] = [
  ['temperature', 'temperature'], ['medium', 'medium'], ['stages', 'warm and cold stages'],
  ['scarification', 'scarification'], ['disinfection', 'disinfection'],
];

/** What differs between two groups besides the treatment, in plain words. */
export function differences(a: Group, b: Group): string[] {
  const other = named.filter(([what]) => a.conditions[what] !== b.conditions[what]).map(([, words]) => words);
  return apart(a, b) > SAME_SOWING_DAYS ? [...other, 'sowing date'] : other;
}

/** The most days between the day 0 of a batch of one group and of one of the other. */
function apart(a: Group, b: Group): number {
  const days = (group: Group) => group.batches.map(({ batch }) => batch.origin?.moment.day ?? NaN);
  const [first, second] = [days(a), days(b)];
  return Math.max(...first.flatMap(x => second.map(y => Math.abs(x - y))));
}
