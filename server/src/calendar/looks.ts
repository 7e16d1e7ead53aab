/** When a batch was last looked at, and whether there is still anything in it to count. */
import type { BatchEvent, DatedEntry } from '../journal/life.ts';
import { meaningOf } from '../model/events.ts';
import type { Day } from '../model/day.ts';
import { dayAfter, type Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import { isOpen, isUnsettled, type Standing } from './standing.ts';

/** A record for which the grower had the batch in hand and saw what was in it. */
export function isLook(event: BatchEvent): boolean {
  return meaningOf(event).isLook;
}

/** The last look at a batch since it was sown; undefined before that. */
export function lastLook({ past, sowing }: Standing): DatedEntry | undefined {
  return sowing && (past.findLast(isLook)?.entry ?? sowing);
}

/** When the next look is due after one on a day, or so many intervals later. */
export function nextLook(day: Day, { value, unit }: Duration, intervals = 1): Day {
  return dayAfter(day, { value: value * intervals, unit });
}

/**
 * Whether a batch is still to be counted: it was sown, is open, and not every seed is accounted for. One that passes
 * through stages is counted on until its seedlings are up: some roots wait a winter for their shoots.
 */
export function isCounted(standing: Standing): boolean {
  const { sowing, batch: { stages }, totals } = standing;
  if (!sowing || !isOpen(standing)) return false;
  if (isUnsettled(standing)) return true;
  const staged = stages.length > 0 || factOf(sowing.record, 'regime') !== undefined;
  return staged && totals.emerged < totals.germinated - totals.died;
}
