import { isoOf } from '../model/day.ts';
import { meaningOfKeyword, type EventMeaning } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { listed } from '../syntax/nearest.ts';
import { isForgotten } from '../journal/soaking.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

const onward: ReadonlySet<EventMeaning['soak'] | undefined> = new Set(['begins', 'onward', 'seen out', 'carried'] as const);

function noEnd(days: number): string {
  return `no end recorded; it began ${days} days ago`;
}

/** Seed went on from a soak, and when it came out is not written; or nothing at all tells of its end. */
export const liftMissing: LotCheck = function* (_lot, { now }, events) {
  for (const { soak, soak: { entry, endedBy, endEntry }, batches } of events.soaks) {
    if (entry.record.broken || batches.some(({ unread }) => unread)) continue;
    if (!soak.end && isForgotten(soak, now)) {
      yield found(entry.line, 'lift-missing', subjectOf(entry), {
        batch: listed(batches.map(({ path }) => path), 'and'), how: noEnd(now.day - soak.start.day),
        suggestion: 'Write a “lift” with the day on which the seed came out. If you do not know it, leave it out: the length of the soak then stays unknown.',
      });
    }
    if (endedBy !== 'next' || !endEntry) continue;
    const { keyword } = endEntry.record;
    // What is cut open or thrown away needs no lifting.
    if (!onward.has(meaningOfKeyword(keyword)?.soak)) continue;
    const planned = factOf(entry.record, 'duration') ?? factOf(entry.record, 'until');
    const suggestion = planned
      ? 'The planned end comes after that: write a “lift”, or correct a date.'
      : 'Write a “lift”, or write on the soak how long it lasted.';
    yield found(entry.line, 'lift-missing', subjectOf(entry),
      { batch: listed(batches.map(({ path }) => path), 'and'), how: `“${keyword}” follows on ${isoOf(endEntry.moment.day)}, but no “lift” says when the seed came out of this soak`, suggestion },
      { related: [relatedTo(endEntry, 'What came next')] });
  }
};
