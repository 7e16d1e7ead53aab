/** From a batch of the journal to the course of counts that the measures work on. */
import { SAME_SOWING_DAYS } from '../calendar/together.ts';
import { rangeOf, testedAt, type Bound } from '../journal/estimates.ts';
import { accounted, isGivenOut, originOf, type Batch, type BatchEvent, type CutEvent, type Totals } from '../journal/life.ts';
import type { Check, Course, CutTest } from '../measures/course.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import type { Day } from '../model/day.ts';
import { cutClasses } from '../model/record.ts';

/**
 * The counts of a batch in days from day 0, with the seeds that they are of: those tested when it was last counted. A
 * cut test that adds up is a check too: every seed was looked at. Undefined, with the reason, where a number is not
 * known, and where seed that had not germinated was picked out between counts. `bound`: the end of an estimate of the
 * seeds that is taken for their number; without one such a course is undefined.
 */
export function courseOf(batch: Batch, bound?: Bound): Course | Undefined {
  if (isPickedOver(batch.events)) return undefinedBecause('seed that had not germinated was taken out after counting began');
  return courseBy(batch, batch.events, batch.closed !== undefined || isGivenOut(batch), bound);
}

/** The same up to an event of the batch, which ends it; what comes after is left out. */
export function courseBefore(batch: Batch, end: BatchEvent, bound?: Bound): Course | Undefined {
  const course = courseBy(batch, eventsBefore(batch, end), true, bound);
  return isUndefined(course) || end.type === 'soak' ? course : { ...course, cutShort: true };
}

/** A course as it stood before a day. */
export function courseUntil(course: Course, dayZero: Day, day: Day): Course {
  const { sown, checks, untimed } = course;
  const before = checks.filter(check => dayZero + check.day < day);
  return { sown, checks: before, ...(untimed !== undefined && { untimed }) };
}

/** Day 0 of a batch, or of what happened to it up to an event. */
export function dayZeroOf(batch: Batch, end?: BatchEvent): Day | undefined {
  return dayZero(batch, end ? eventsBefore(batch, end) : batch.events);
}

function eventsBefore({ events }: Batch, end: BatchEvent): readonly BatchEvent[] {
  return events.slice(0, events.indexOf(end));
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
  if (zero === undefined) return undefinedBecause('it has no day 0, because it was not sown, lifted from a soak or put into a stage');
  const cut = events.find(event => event.type === 'cut');
  const sown = testedIn(events) ?? batch.tested ?? (bound && estimatedIn(batch, events, bound));
  if (sown === undefined && batch.worlds.length > 0) return undefinedBecause('its seeds were estimated, not counted');
  if (sown === undefined) return undefinedBecause('the number of seeds is unknown');
  const checks = events.flatMap(event => {
    const totals = seenAt(event);
    return totals ? [checkOf(event.entry.moment.day - zero, totals)] : [];
  });
  const untimed = portionsOf(batch, events);
  return {
    sown, checks,
    ...(cut && { cut: classesOf(cut) }),
    ...(closed && { closed }),
    ...(untimed !== undefined && { untimed }),
  };
}

/** The seeds that the last count, or the cut test, was of. */
function testedIn(events: readonly BatchEvent[]): number | undefined {
  const last = events.findLast(event => event.type === 'count' || event.type === 'cut');
  return last?.tested;
}

/** One end of the seeds that the last count was of; at least those that it accounts for. */
function estimatedIn(batch: Batch, events: readonly BatchEvent[], bound: Bound): number | undefined {
  const last = events.findLast(event => event.type === 'count' || event.type === 'cut');
  const range = (last && testedAt(batch, last)) ?? rangeOf(batch, 'tested');
  if (!range || bound === 'most') return range?.most;
  const seen = last && seenAt(last);
  return Math.max(range.least, seen ? accounted(seen) : 0);
}

function seenAt(event: BatchEvent): Totals | undefined {
  if (event.type === 'count') return event.after;
  return event.type === 'cut' && sortedBy(event) === event.expected ? event.totals : undefined;
}

function sortedBy({ classes }: CutEvent): number {
  return cutClasses.reduce((sum, what) => sum + classes[what], 0);
}

function classesOf({ classes: { fresh, hard, dead, empty } }: CutEvent): CutTest {
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
  let hasGrown = false;
  for (const event of events) {
    if (event.type === 'count') hasGrown = accounted(event.after) > event.after.lost;
    else if ((event.type === 'split' || event.type === 'leave') && event.asked !== 0 && hasGrown) found.add(event);
  }
  return found;
}
