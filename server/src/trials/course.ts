/** From a batch of the journal to the course of counts that the measures work on. */
import { SAME_SOWING_DAYS } from '../calendar/together.ts';
import { rangeOf, testedAt, type Bound } from '../journal/estimates.ts';
import { hasGrown, isGivenOut } from '../journal/given-out.ts';
import {
  accounted, originOf,
  type Batch, type BatchEvent, type CountEvent, type CutEvent, type LeaveEvent, type SplitEvent, type Totals,
} from '../journal/life.ts';
import type { Check, Course, CutTest } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import { isoOf, type Day } from '../model/day.ts';
import { cutClasses } from '../model/record.ts';

/**
 * The counts of a batch in days from day 0, with the seeds that they are of: those tested when it was last counted. A
 * cut test that adds up is a check too: every seed was looked at. Undefined, with the reason, where a number is not
 * known, and where seed that had not germinated was picked out between counts. `bound`: the end of an estimate of the
 * seeds that is taken for their number; without one such a course is undefined.
 */
export function courseOf(batch: Batch, bound?: Bound): Course | Undefined {
  if (isPickedOver(batch.events)) return undefinedBecause('seed that had not germinated was taken out after counting began');
  const course = courseBy(batch, batch.events, batch.closed !== undefined || isGivenOut(batch), bound);
  return isUndefined(course) || !hasPick(batch.events) ? course : { ...course, closed: true, cutShort: true };
}

/** The same up to an event of the batch, which ends it; what comes after is left out. */
export function courseBefore(batch: Batch, end: BatchEvent, bound?: Bound): Course | Undefined {
  const course = courseBy(batch, eventsBefore(batch, end), true, bound);
  return isUndefined(course) || end.type === 'soak' || end.type === 'apply' ? course : { ...course, cutShort: true };
}

/** A course as it stood before a day. */
export function courseUntil(course: Course, dayZero: Day, day: Day): Course {
  const { sown, checks, untimed } = course;
  const before = checks.filter(check => dayZero + check.day < day);
  return { sown, checks: before, ...(untimed !== undefined && { untimed }) };
}

/** Day 0 of a batch, or of what happened to it up to an event. */
export function dayZeroOf(batch: Batch, end?: BatchEvent): Day | undefined {
  return dayZero(batch, eventsBefore(batch, end));
}

/** The own events of a batch up to one of them; all where none ends its part. */
export function eventsBefore({ events }: Batch, end: BatchEvent | undefined): readonly BatchEvent[] {
  return end ? events.slice(0, events.indexOf(end)) : events;
}

function dayZero(batch: Batch, events: readonly BatchEvent[]): Day | undefined {
  const { sowing, soaks, stages, origin } = batch;
  if (events.length === batch.events.length) return origin?.moment.day;
  const later = new Set(batch.events.slice(events.length).map(({ entry }) => entry.line));
  return originOf({
    sowing: sowing && !later.has(sowing.line) ? sowing : undefined,
    soaks: soaks.filter(({ entry }) => !later.has(entry.line)),
    stages: stages.filter(({ entry }) => !later.has(entry.line)),
  })?.moment.day;
}

function courseBy(
  batch: Batch, events: readonly BatchEvent[], closed: boolean, bound: Bound | undefined,
): Course | Undefined {
  if (!events.some(seenAt)) return undefinedBecause('no counts yet');
  const zero = dayZero(batch, events);
  const early = zero === undefined && batch.origin && events.find(seenAt);
  if (early) return undefinedBecause(earlyText(early));
  if (zero === undefined) return undefinedBecause('it has no day 0, because it was not sown, lifted from a soak or put into a stage');
  const cut = events.find(event => event.type === 'cut');
  const sown = lastTested(events)?.tested ?? batch.tested ?? (bound && estimatedIn(batch, events, bound));
  if (sown === undefined && batch.worlds.length > 0) return undefinedBecause('its seeds were estimated, not counted');
  if (sown === undefined) return undefinedBecause('the number of seeds is unknown');
  const own = events.flatMap(event => {
    const totals = seenAt(event);
    return totals ? [checkOf(event.entry.moment.day - zero, totals)] : [];
  });
  const checks = [...checksBefore(batch, events, zero).filter(({ day }) => day <= own[0]!.day), ...own];
  const untimed = portionsOf(batch, events);
  const until = seedlingsUntil(events, zero);
  return {
    sown, checks,
    ...(until !== undefined && { seedlingsUntil: until }),
    ...(cut && { cut: classesOf(cut) }),
    ...(closed && { closed }),
    ...(untimed !== undefined && { untimed }),
  };
}

/** A look at seed that nothing had been done to, as where its year is wrong. */
function earlyText({ entry: { record, moment } }: BatchEvent): string {
  return `its “${record.keyword}” of ${isoOf(moment.day)} is dated before anything was done to it: is the date right?`;
}

/**
 * Looks at the seed before it was split off, at which none had germinated or rotted; not those before its last soak,
 * when it was other seed than it is now, nor those of seed that was the rest of a sowing.
 */
function checksBefore({ inherited }: Batch, events: readonly BatchEvent[], zero: Day): Check[] {
  const last = inherited.findLast(event => event.type === 'count');
  if (!last || hasGrown(last.after)) return [];
  const soaked = [...inherited, ...events].findLastIndex(({ type }) => type === 'soak');
  return inherited.slice(soaked + 1).flatMap(({ type, entry }) => (
    type === 'count' ? [{ day: entry.moment.day - zero, germinated: 0 }] : []));
}

/**
 * What tells the seeds that are tested: those that the last count, or the cut test, was of, less what was split off or
 * left since, before any had germinated or rotted. What is found of that seed is found where it went.
 */
function lastTested(events: readonly BatchEvent[]): CountEvent | CutEvent | SplitEvent | LeaveEvent | undefined {
  return events.findLast((event): event is CountEvent | CutEvent | SplitEvent | LeaveEvent => (
    event.type === 'count' || event.type === 'cut'
    || ((event.type === 'split' || event.type === 'leave') && !isPick(event, events))));
}

/** The day on which the first of the seedlings left. */
export function seedlingsUntil(events: readonly BatchEvent[], zero: Day): number | undefined {
  const left = events.find(event => event.type === 'leave' && event.seedlings > 0);
  return left && left.entry.moment.day - zero;
}

/** One end of the seeds that the last count was of; at least those that it accounts for. */
function estimatedIn(batch: Batch, events: readonly BatchEvent[], bound: Bound): number | undefined {
  const last = lastTested(events);
  const range = (last && testedAt(batch, last)) ?? rangeOf(batch, 'tested');
  if (!range || bound === 'most') return range?.most;
  const look = events.findLast(event => seenAt(event) !== undefined);
  const seen = look && seenAt(look);
  return Math.max(range.least, seen ? accounted(seen) : 0);
}

/** What had been seen by a count, or by a cut test that adds up; undefined for all else. */
export function seenAt(event: BatchEvent): Totals | undefined {
  if (event.type === 'count') return event.after;
  return event.type === 'cut' && sortedBy(event) === event.expected ? event.totals : undefined;
}

function sortedBy({ classes }: CutEvent): number {
  return cutClasses.reduce((sum, what) => sum + classes[what], 0);
}

export function classesOf({ classes: { fresh, hard, dead, empty } }: CutEvent): CutTest {
  return { fresh, hard, dead, empty };
}

function checkOf(day: number, { germinated, emerged, leaf, leggy, abnormal, died, rotted, lost }: Totals): Check {
  return { day, germinated, emerged, leaf, leggy, abnormal, died, rotted, lost };
}

/** Seed that was sown on different days has different days 0. */
function portionsOf(batch: Batch, events: readonly BatchEvent[]): string | undefined {
  return portionDays(batch, events) > SAME_SOWING_DAYS
    ? 'it was sown in portions, each with its own day 0'
    : undefined;
}

/** Days from the first to the last portion that was sown; 0 where there is one or none. */
export function portionDays({ sowing }: Batch, events: readonly BatchEvent[]): number {
  const days = events.flatMap(event => (event.type === 'sow' && !event.again ? [event.entry.moment.day] : []));
  if (sowing) days.push(sowing.moment.day);
  return days.length === 0 ? 0 : Math.max(...days) - Math.min(...days);
}

/** Whether seed was split off, after some had germinated or rotted, between two counts. */
function isPickedOver(events: readonly BatchEvent[]): boolean {
  const last = events.findLastIndex(({ type }) => type === 'count');
  return events.slice(0, last).some(event => isPick(event, events));
}

/** Whether seed that had not germinated was taken out at all: a count since would not be one of the same seed. */
function hasPick(events: readonly BatchEvent[]): boolean {
  return events.some(event => isPick(event, events));
}

/** Whether an event is such a `split`. */
export function isPick(event: BatchEvent, events: readonly BatchEvent[]): boolean {
  let known = picks.get(events);
  if (!known) picks.set(events, known = picksIn(events));
  return known.has(event);
}

/** By the events of a batch, each of which is asked about. */
const picks = new WeakMap<readonly BatchEvent[], ReadonlySet<BatchEvent>>();

function picksIn(events: readonly BatchEvent[]): ReadonlySet<BatchEvent> {
  const found = new Set<BatchEvent>();
  let isGrown = false;
  for (const event of events) {
    if (event.type === 'count') isGrown = hasGrown(event.after);
    else if ((event.type === 'split' || event.type === 'leave') && event.asked !== 0 && isGrown) found.add(event);
  }
  return found;
}
