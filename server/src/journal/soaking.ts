/** Into the soak and out of it. */
import type { EventMeaning } from '../model/events.ts';
import { minutesOf, type Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import type { BatchDraft, Draft } from './batches.ts';
import type { DatedEntry, Dose, Soak } from './life.ts';
import { after, elapsed, isBefore, type Elapsed, type Moment } from './moment.ts';
import { DAY } from './zone.ts';

/** A soak as its own record tells it, with the end that it sets. */
export function startSoak(entry: DatedEntry, doses: readonly Dose[], zone: string | undefined): Draft<Soak> {
  const { record, moment } = entry;
  const soak: Draft<Soak> = {
    entry, doses, start: moment, end: undefined, endedBy: undefined, endEntry: undefined, length: undefined,
  };
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  if (until) {
    setEnd(soak, { day: until.date.day, minutes: until.time?.minutes }, 'until', zone);
  } else if (duration) {
    setEnd(soak, after(moment, duration, zone), 'duration', zone);
    soak.length = writtenLength(soak, duration);
  }
  return soak;
}

/** The length is what was written, whether or not the time of day was. */
function writtenLength({ start, end, length }: Soak, duration: Duration): Elapsed | undefined {
  const isClock = duration.unit === 'h' || duration.unit === 'min' || !Number.isInteger(duration.value);
  // From seven to seven o'clock a day is not always 24 h.
  if (!isClock && start.minutes !== undefined) return length;
  const minutes = minutesOf(duration) ?? (end!.day - start.day) * DAY;
  return { least: minutes, most: minutes, wallClock: false };
}

/** The seed comes out as a `lift` says; undefined where it was in no soak. */
export function liftSoak(batch: BatchDraft, entry: DatedEntry, zone: string | undefined): Soak | undefined {
  const soak = batch.soaking;
  batch.soaking = batch.seenOut = undefined;
  if (soak) setEnd(soak, entry.moment, 'lift', zone, entry);
  return soak;
}

/**
 * The seed goes on to something else. A soak whose end is set counts as over by then; of any other it is not known when
 * the seed came out.
 */
export function leaveSoak(batch: BatchDraft, next: DatedEntry, zone: string | undefined): void {
  const soak = batch.soaking;
  batch.soaking = batch.seenOut = undefined;
  if (!soak || (soak.end && !isBefore(next.moment, soak.end))) return;
  setEnd(soak, next.moment, 'next', zone, next);
  soak.length &&= { ...soak.length, least: 0 };
}

/**
 * Days behind its planned end, or behind its start where none is written, after which nobody is taken to have left seed
 * in a soak. Common practice, no source.
 */
const FORGOTTEN_DAYS = 30;

/** Whether a soak that no record ended lies so far back that the seed is not in it any more. */
export function isForgotten(soak: Soak, at: Moment): boolean {
  return !isEnded(soak) && isLongBehind(soak, at);
}

function isEnded({ endedBy }: Soak): boolean {
  return endedBy === 'lift' || endedBy === 'next';
}

function isLongBehind(soak: Soak, { day }: Moment): boolean {
  const planned = isEnded(soak) ? undefined : soak.end;
  return day - (planned ?? soak.start).day > FORGOTTEN_DAYS;
}

/**
 * Whether what a record means shows that the seed is out of a soak before it. What is seen of seed before the planned
 * end of its soak, such as a root in a count, may be seen while it lies there.
 */
export function showsOut({ soak: meaning }: EventMeaning, soak: Soak, at: Moment): boolean {
  if (meaning === 'carried') return isLongBehind(soak, at);
  if (meaning === 'seen out' && soak.end && !isEnded(soak) && isBefore(at, soak.end)) return false;
  return meaning !== 'silent';
}

/** A soak that nothing ended, and by whose side a later record saw the seed: it was out by then. */
export function leaveSeenOut(batch: BatchDraft, zone: string | undefined): void {
  const { seenOut, soaking } = batch;
  if (seenOut && soaking && !soaking.end) leaveSoak(batch, seenOut, zone);
}

function setEnd(
  soak: Draft<Soak>, end: Moment, by: NonNullable<Soak['endedBy']>, zone: string | undefined, entry?: DatedEntry,
): void {
  soak.end = end;
  soak.endedBy = by;
  soak.endEntry = entry;
  soak.length = isBefore(end, soak.start) ? undefined : elapsed(soak.start, end, zone);
}
