/** The soaks in which seed lies now, with the moment at which each is to end: the due list and the alarm ask here. */
import type { Batch, BatchEvent, Lot, Soak } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import { after, type Moment } from '../journal/moment.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { isOpen, standingOf, type Standing } from './standing.ts';

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
}

/** Whether an event shows that the seed is out of any soak before it. */
export function isHandling(event: BatchEvent): boolean {
  return meaningOf(event).soak !== 'silent';
}

/**
 * A soak runs from its start until a record shows that the seed is out: `lift`, the next soak, `sow`, `chill`, `warm`,
 * `count`, `pot`, or the close of the batch. A soak whose planned end has passed still runs: nobody wrote that the seed
 * came out.
 */
export function runningSoaks(journal: Journal, now: Moment): RunningSoak[] {
  const all: RunningSoak[] = [];
  for (const lot of journal.lots()) {
    for (const batch of lot.batches.values()) {
      if (batch.soaks.length === 0) continue;
      const running = runningSoak(journal, lot, standingOf(batch, now));
      if (running) all.push(running);
    }
  }
  return all;
}

/** The soak that a batch lies in. */
export function runningSoak({ limits, zone }: Journal, lot: Lot, standing: Standing): RunningSoak | undefined {
  const last = standing.past.findLast(isHandling);
  if (last?.type !== 'soak' || !isOpen(standing)) return undefined;
  const { soak } = last;
  const { record } = soak.entry;
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  const limitAt = after(soak.start, limits.soak(lot.plant).value, zone);
  const base = { lot, batch: standing.batch, soak, limitAt, endAhead: standing.ahead.find(isHandling) };
  if (until) return { ...base, end: { day: until.date.day, minutes: until.time?.minutes }, endBy: 'until' };
  if (duration) return { ...base, end: after(soak.start, duration, zone), endBy: 'duration' };
  return { ...base, end: limitAt, endBy: 'limit' };
}
