/** A batch as it stands at a moment. What is dated later is written ahead: a plan, which has not happened yet. */
import { isGivenOut } from '../journal/given-out.ts';
import {
  accounted, noTotals, type Batch, type BatchEvent, type DatedEntry, type Totals,
} from '../journal/life.ts';
import { isBefore, type Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { isStep } from '../model/events.ts';
import { factOf } from '../model/record.ts';

export interface Standing {
  readonly batch: Batch;
  /** What has happened, in the order of time; what it took along from its parent comes first. */
  readonly past: readonly BatchEvent[];
  /** Its own records of later dates. */
  readonly ahead: readonly BatchEvent[];
  readonly totals: Totals;
  readonly sowing: DatedEntry | undefined;
  readonly closed: BatchEvent | undefined;
  /** All its seeds have been given out to others. */
  readonly givenOut: boolean;
}

/** Whether a moment has come; one of today without a time of day has. */
export function hasCome(moment: Moment, now: Moment): boolean {
  return !isBefore(now, moment);
}

export function standingOf(batch: Batch, now: Moment): Standing {
  if (!isMade(batch, now)) return { batch, ahead: batch.events, ...untouched };
  const { past, ahead } = divided(batch, now);
  const count = past.findLast(event => event.type === 'count' && event.batch === batch);
  const { sowing, closed } = batch;
  return {
    batch, past, ahead,
    totals: count?.type === 'count' ? count.after : noTotals,
    sowing: sowing && hasCome(sowing.moment, now) ? sowing : undefined,
    closed: closed && hasCome(closed.entry.moment, now) ? closed : undefined,
    givenOut: isGivenOut(batch) && !isToBeSplit(ahead),
  };
}

const none: readonly BatchEvent[] = [];

const untouched = { past: none, totals: noTotals, sowing: undefined, closed: undefined, givenOut: false };

/** Until the day of the `split` that makes it, its seed lies in the batch that it comes from. */
function isMade({ parent, made: { moment } }: Batch, now: Moment): boolean {
  return !parent || !moment || hasCome(moment, now);
}

function divided({ inherited, events }: Batch, now: Moment): Pick<Standing, 'past' | 'ahead'> {
  const all = inherited.length === 0 ? events : [...inherited, ...events];
  // Most batches have nothing written ahead, and a journal has thousands of them.
  if (isBeforeToday(inherited.at(-1), now) && isBeforeToday(events.at(-1), now)) return { past: all, ahead: none };
  return {
    past: all.filter(({ entry }) => hasCome(entry.moment, now)),
    ahead: events.filter(({ entry }) => !hasCome(entry.moment, now)),
  };
}

function isBeforeToday(last: BatchEvent | undefined, { day }: Moment): boolean {
  return last === undefined || last.entry.moment.day < day;
}

/** The day on which something was first done to the seed, also before it was split off; undefined before that. */
export function begunOn({ inherited, events }: Batch, now: Moment): Day | undefined {
  const first = [...inherited, ...events].find(isStep)?.entry.moment.day;
  return first !== undefined && first <= now.day ? first : undefined;
}

/**
 * Whether not all seed is accounted for. What is to be split off later is there until then, and not among the seeds
 * that the counts are about.
 */
export function isUnsettled({ ahead, totals, batch: { tested } }: Standing): boolean {
  return isToBeSplit(ahead) || tested === undefined || accounted(totals) < tested;
}

function isToBeSplit(ahead: readonly BatchEvent[]): boolean {
  return ahead.some(({ type }) => type === 'split');
}

/** Whether anything can still become of a batch: it is not closed, not given out, not all dead, not all pricked out. */
export function isOpen(standing: Standing): boolean {
  const { closed, givenOut, totals, past } = standing;
  if (closed || givenOut) return false;
  if (isUnsettled(standing)) return true;
  const alive = totals.germinated - totals.died;
  // Seedlings may have been pricked out before they left.
  const left = past.reduce((all, event) => all + (event.type === 'leave' ? event.seedlings : 0), 0);
  return alive > Math.max(pottedIn(past), left);
}

/** Seedlings that were pricked out, as far as their number was written. */
export function pottedIn(past: readonly BatchEvent[]): number {
  return past.reduce((all, { type, entry }) => (
    all + (type === 'pot' ? factOf(entry.record, 'seedlings')?.n.value ?? 0 : 0)), 0);
}
