/** Records that say what was seen of seed. Unlike all else that happens to it, that cannot be planned. */
import type { Day } from '../model/day.ts';
import type { BatchEvent } from './life.ts';

/** A count or a cut test. */
export function saysWhatWasSeen({ type }: BatchEvent): boolean {
  return type === 'count' || type === 'cut';
}

/** One that is dated after today, which cannot be right. */
export function isSeenAhead(event: BatchEvent, today: Day): boolean {
  return event.entry.moment.day > today && saysWhatWasSeen(event);
}
