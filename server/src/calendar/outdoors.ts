/** Seed that stands outdoors, where nobody sets a temperature, and the day on which the grower means to look again. */
import type { BatchEvent, DatedEntry } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';

/**
 * The record since which a batch is outdoors, by what happened to it so far; undefined where it is not. A sowing, a
 * stage, or a move to another place without the word brings it in. Seedlings that are potted leave the seed where it
 * is.
 */
export function outdoorsSince(past: readonly BatchEvent[]): DatedEntry | undefined {
  let since: DatedEntry | undefined;
  for (const { type, entry } of past) {
    if (factOf(entry.record, 'outdoors')) since ??= entry;
    else if (type === 'sow' || type === 'stage') since = undefined;
    else if (type === 'move' && factOf(entry.record, 'at')) since = undefined;
  }
  return since;
}

/** The day of the last `look again` that no look has answered; undefined where there is none. */
export function wantedLook(past: readonly BatchEvent[]): Day | undefined {
  let wanted: Day | undefined;
  for (const event of past) {
    const { moment: { day }, record } = event.entry;
    if (wanted !== undefined && meaningOf(event).isLook && day >= wanted) wanted = undefined;
    wanted = factOf(record, 'look')?.date.day ?? wanted;
  }
  return wanted;
}
