/** When a batch was last looked at, and whether there is still anything in it to count. */
import type { BatchEvent, DatedEntry } from '../journal/life.ts';
import { meaningOf } from '../model/events.ts';
import type { Day } from '../model/day.ts';
import { dayAfter, type Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import { wantedLook } from './outdoors.ts';
import { lastSoak } from './soaks.ts';
import { isOpen, isUnsettled, type Standing } from './standing.ts';

/** A record for which the grower had the batch in hand and saw what was in it. */
export function isLook(event: BatchEvent): boolean {
  return meaningOf(event).isLook;
}

/** The record since which a batch can germinate: its sowing, else the first soak or stage; undefined before that. */
export function wokenBy({ past, sowing }: Standing): DatedEntry | undefined {
  return sowing ?? past.find(event => meaningOf(event).wakes)?.entry;
}

/** The last look at a batch since it can germinate; undefined before that. */
export function lastLook(standing: Standing): DatedEntry | undefined {
  const woken = wokenBy(standing);
  return woken && (standing.past.findLast(isLook)?.entry ?? woken);
}

/** When the next look is due after one on a day, or so many intervals later. */
export function nextLook(day: Day, { value, unit }: Duration, intervals = 1): Day {
  return dayAfter(day, { value: value * intervals, unit });
}

/** Whether a batch is still to be counted: somebody looks for what comes up in it, it is open, and more can come up. */
export function isCounted(standing: Standing): boolean {
  return (standing.sowing !== undefined || isWatchedUnsown(standing)) && isOpen(standing) && isAwaited(standing);
}

/**
 * Whether there is more to come: not every seed is accounted for, or seedlings of a batch that passes through stages
 * are not up yet. Some roots wait a winter for their shoots.
 */
export function isAwaited(standing: Standing): boolean {
  if (isUnsettled(standing)) return true;
  const { sowing, batch: { stages }, totals } = standing;
  const staged = stages.length > 0 || (sowing !== undefined && factOf(sowing.record, 'regime') !== undefined);
  return staged && totals.emerged < totals.germinated - totals.died;
}

/**
 * Seed in a damp towel that nobody sows is watched once it lies in the warm, was counted since it got wet, or has a day
 * on which the grower means to look. Before that, a packet in the cold is left alone until its stage ends. Seed in a
 * soak is to be lifted, which is due by itself.
 */
function isWatchedUnsown(standing: Standing): boolean {
  const since = sinceWoken(standing);
  if (since.length === 0 || lastSoak(standing.past)) return false;
  return lastStage(since) === 'warm' || isCountedWet(standing) || wantedLook(since) !== undefined;
}

/** Whether somebody counted seed since it got wet or into its first stage. */
export function isCountedWet(standing: Standing): boolean {
  return sinceWoken(standing).some(({ type }) => type === 'count');
}

/**
 * Whether unsown seed in the cold is left alone until its stage ends, as nobody counted it so far: no count of it is
 * due, but one may be wanted.
 */
export function isLeftInCold(standing: Standing): boolean {
  return standing.sowing === undefined && isOpen(standing) && isAwaited(standing) && !isWatchedUnsown(standing)
    && lastStage(sinceWoken(standing)) === 'chill' && !lastSoak(standing.past);
}

function sinceWoken({ past }: Standing): readonly BatchEvent[] {
  const woken = past.findIndex(event => meaningOf(event).wakes);
  return woken < 0 ? [] : past.slice(woken);
}

function lastStage(events: readonly BatchEvent[]): 'chill' | 'warm' | undefined {
  const last = events.findLast(({ type }) => type === 'stage');
  return last?.type === 'stage' ? last.stage.stage : undefined;
}
