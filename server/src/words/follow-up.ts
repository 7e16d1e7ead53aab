/** What was counted in a batch after drops were given. Whether it comes of them, only a comparison tells. */
import { countsOf, noTotals, type Batch, type BatchEvent, type CountEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { daysText } from './days.ts';

interface FollowUp {
  /** The counts after it, of the same day only those that stand below. */
  readonly counts: readonly CountEvent[];
  /** Leaves before it, and the first count that saw a new one. */
  readonly leavesBefore: number;
  readonly firstLeaf: CountEvent | undefined;
}

function followUpOf(batch: Batch, event: BatchEvent): FollowUp {
  const at = batch.events.indexOf(event);
  const all = countsOf(batch);
  const counts = all.filter(count => batch.events.indexOf(count) > at);
  const leavesBefore = (all.findLast(count => batch.events.indexOf(count) < at)?.after ?? noTotals).leaf;
  return { counts, leavesBefore, firstLeaf: counts.find(({ after }) => after.leaf > leavesBefore) };
}

/**
 * Example: 'First new leaf seen 2026-12-01, 16 days later; 3 by 2026-12-20, 1 before.'
 */
export function followUpText(batch: Batch, event: BatchEvent): string {
  const { counts, leavesBefore, firstLeaf } = followUpOf(batch, event);
  const last = counts.at(-1);
  if (!last) return 'Not counted since.';
  const later = (count: CountEvent) => daysText(count.entry.moment.day - event.entry.moment.day);
  const on = isoOf(last.entry.moment.day);
  const first = counts[0]!.before;
  const harm = (['died', 'leggy', 'abnormal'] as const)
    .map(what => ({ what, n: last.after[what] - first[what] }))
    .filter(({ n }) => n > 0)
    .map(({ what, n }) => `${n} ${what}`);
  const since = harm.length > 0 ? ` New since then: ${harm.join(', ')}.` : '';
  if (!firstLeaf) return `No new leaf seen by ${on}, ${later(last)} later.${since}`;
  const seen = `First new leaf seen ${isoOf(firstLeaf.entry.moment.day)}, ${later(firstLeaf)} later`;
  return `${seen}; ${last.after.leaf} in all by ${on}, ${leavesBefore} before.${since}`;
}
