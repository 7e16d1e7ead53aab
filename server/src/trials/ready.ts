/** Records of untreated seed that came up readily: what the advice not to treat a plant rests on. */
import { countsOf, type CountEvent, type Lot } from '../journal/life.ts';
import { isUndefined } from '../measures/measured.ts';
import { readiness, type Readiness } from '../measures/readiness.ts';
import type { Day } from '../model/day.ts';
import { courseUntil } from './course.ts';
import { faultyBatches } from './faults.ts';
import { groupsOf, type Group } from './groups.ts';
import { isActiveSoak } from './treatment.ts';

export interface ReadyRecord {
  readonly lot: Lot;
  readonly group: Group;
  /** As it was known before the day asked for. */
  readonly readiness: Readiness;
  /** The last count before that day that found new germinated seed. */
  readonly last: CountEvent;
}

/** Untreated seed, and the day from which on it was known to come up readily. */
interface Ready {
  readonly group: Group;
  readonly since: Day;
}

const memo = new WeakMap<Lot, readonly Ready[]>();

/** The latest record in some lots from which it was known before a day that their seed comes up readily. */
export function readyBefore(lots: readonly Lot[], day: Day): ReadyRecord | undefined {
  const found = lots.flatMap(lot => readyIn(lot).map(ready => ({ lot, ...ready }))).filter(({ since }) => since < day);
  const latest = found.reduce<typeof found[number] | undefined>((a, b) => (a && a.since >= b.since ? a : b), undefined);
  const known = latest && readinessUntil(latest.group, day);
  if (!known) return undefined;
  const { lot, group } = latest;
  return { lot, group, readiness: known, last: lastGermination(group, day)! };
}

/**
 * Untreated seed that did as well and as soon as that, but after it had been chilled, warmed or scarified, or as the
 * rest of a sowing; the latest first.
 */
export function readyPrepared(lots: readonly Lot[], day: Day): ReadyRecord[] {
  return lots.flatMap(lot => groupsIn(lot)
    .filter(group => group.treatment.length === 0 && !isPlain(group))
    .flatMap((group): ReadyRecord[] => {
      const known = readinessUntil(group, day);
      return known ? [{ lot, group, readiness: known, last: lastGermination(group, day)! }] : [];
    }))
    .sort((a, b) => b.last.entry.moment.day - a.last.entry.moment.day);
}

/** Those of which untreated seed came up readily at some time; no other has a record. */
export function everReady(lots: readonly Lot[]): Lot[] {
  return lots.filter(lot => readyIn(lot).length > 0);
}

/** A glance that spares most lots the rest: where half of no batch came up untreated, half of no group did. */
function mayBeReady({ batches }: Lot): boolean {
  return [...batches.values()].some(({ inherited, events }) => {
    const life = [...inherited, ...events];
    const treated = life.findIndex(event => event.type === 'soak' && isActiveSoak(event.soak));
    return life.slice(0, treated < 0 ? undefined : treated).some(event =>
      event.type === 'count' && event.tested !== undefined && event.after.germinated * 2 >= event.tested - event.after.lost);
  });
}

function readyIn(lot: Lot): readonly Ready[] {
  let ready = memo.get(lot);
  if (!ready) memo.set(lot, ready = !mayBeReady(lot) ? [] : groupsIn(lot).filter(isPlain).flatMap(readyFrom));
  return ready;
}

/** Whatever day is asked for: a look that is dated ahead is after it. */
function groupsIn(lot: Lot): readonly Group[] {
  return groupsOf(lot, faultyBatches(lot, Infinity)).groups;
}

/** Seed that was chilled, warmed or scarified did not come up by itself, and the rest of a sowing is no fair sample. */
function isPlain({ treatment, batches }: Group): boolean {
  return treatment.length === 0 && batches.every(({ conditions: { stages, scarified, restOf } }) => (
    stages.length === 0 && scarified.length === 0 && restOf === undefined));
}

function readyFrom(group: Group): Ready[] {
  if (!readinessUntil(group, Infinity)) return [];
  const days = group.batches
    .flatMap(({ conditions: { dayZero }, course }) => course.checks.map(({ day }) => dayZero + day));
  const since = days.sort((a, b) => a - b).find(day => readinessUntil(group, day + 1));
  return since === undefined ? [] : [{ group, since }];
}

/** Undefined where it was not, or not yet, known to be ready. */
function readinessUntil({ batches }: Group, day: Day): Readiness | undefined {
  const courses = batches
    .map(({ conditions, course }) => courseUntil(course, conditions.dayZero, day))
    .filter(({ checks }) => checks.length > 0);
  const found = readiness(courses);
  return !isUndefined(found) && found.ready ? found : undefined;
}

function lastGermination({ batches }: Group, day: Day): CountEvent | undefined {
  return batches
    .flatMap(({ batch }) => countsOf(batch))
    .filter(({ entry, before, after }) => entry.moment.day < day && after.germinated > before.germinated)
    .sort((a, b) => a.entry.moment.day - b.entry.moment.day).at(-1);
}
