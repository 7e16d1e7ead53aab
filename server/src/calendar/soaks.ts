/** Whether seed lies in a soak, and until when: hover, report, places, due list, alarm and checks all ask here. */
import type { Batch, BatchEvent, Lot, Soak } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import { after, isBefore, type Moment } from '../journal/moment.ts';
import { isForgotten, showsOut } from '../journal/soaking.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { isOpen, standingOf, type Standing } from './standing.ts';

/** `no end recorded`: no record says or shows when it ended, and it began too long ago for the seed to be in it. */
export type SoakState = 'to come' | 'in it' | 'out' | 'no end recorded';

/** Without a time of day, a soak that ends today may not be over. */
export function soakState(soak: Soak, { closed }: Batch, now: Moment): SoakState {
  const { start, end } = soak;
  if (isBefore(now, start)) return 'to come';
  if ((end && hasEnded(end, now)) || (closed && !isBefore(now, closed.entry.moment))) return 'out';
  return !end && isForgotten(soak, now) ? 'no end recorded' : 'in it';
}

function hasEnded(end: Moment, now: Moment): boolean {
  return isBefore(end, now) || (end.day === now.day && end.minutes !== undefined && end.minutes === now.minutes);
}

/** The last soak among events in the order of time that no later one shows to be over. */
export function lastSoak(events: readonly BatchEvent[]): Soak | undefined {
  let soak: Soak | undefined;
  for (const event of events) {
    if (event.type === 'soak') ({ soak } = event);
    else if (soak && showsOut(meaningOf(event), soak, event.entry.moment)) soak = undefined;
  }
  return soak;
}

export interface RunningSoak {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly soak: Soak;
  /** When the seed is to come out. */
  readonly end: Moment;
  /** What says so: the record itself, or the limit for soaks where the record names no end. */
  readonly endBy: 'until' | 'duration' | 'limit';
  /** When the limit for soaks is reached. */
  readonly limitAt: Moment;
  /** The record, written ahead, that will take the seed out. */
  readonly endAhead: BatchEvent | undefined;
  /** It lies so far back that the seed is not in it any more, though no record says when it came out. */
  readonly isForgotten: boolean;
}

/** The soaks in which seed lies now, and whose end can still be kept. */
export function runningSoaks(journal: Journal, now: Moment): RunningSoak[] {
  const all: RunningSoak[] = [];
  for (const lot of journal.lots()) {
    for (const batch of lot.batches.values()) {
      if (batch.soaks.length === 0) continue;
      const running = openSoak(journal, lot, standingOf(batch, now), now);
      if (running && !running.isForgotten) all.push(running);
    }
  }
  return all;
}

/**
 * The soak of an open batch that no record shows to be over: `lift`, the next soak, `sow`, `chill`, `warm`, `scarify`,
 * `count`, `apply`, `pot`. One whose planned end has passed still runs: nobody wrote that the seed came out.
 */
export function openSoak(
  { limits, zone }: Journal, lot: Lot, standing: Standing, now: Moment,
): RunningSoak | undefined {
  const { batch, past, ahead } = standing;
  const soak = batch.soaks.length > 0 && isOpen(standing) ? lastSoak(past) : undefined;
  if (!soak) return undefined;
  const { record } = soak.entry;
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  const limitAt = after(soak.start, limits.soak(lot.plant).value, zone);
  const base = {
    lot, batch, soak, limitAt, isForgotten: isForgotten(soak, now),
    endAhead: ahead.find(event => showsOut(meaningOf(event), soak, event.entry.moment)),
  };
  if (until) return { ...base, end: { day: until.date.day, minutes: until.time?.minutes }, endBy: 'until' };
  if (duration) return { ...base, end: after(soak.start, duration, zone), endBy: 'duration' };
  return { ...base, end: limitAt, endBy: 'limit' };
}
