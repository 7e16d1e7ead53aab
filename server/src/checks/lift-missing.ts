import { isoOf } from '../model/day.ts';
import { meaningOfKeyword, type EventMeaning } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

const onward: ReadonlySet<EventMeaning['soak'] | undefined> = new Set(['begins', 'onward', 'seen out'] as const);

/** Seed went on from a soak to something else, and when it came out is not written. */
export const liftMissing: LotCheck = function* (_lot, _context, events) {
  for (const { soak: { entry, endedBy, endEntry }, batches } of events.soaks) {
    if (endedBy !== 'next' || !endEntry || entry.record.broken || batches.some(({ unread }) => unread)) continue;
    const { keyword } = endEntry.record;
    // What is cut open or thrown away needs no lifting.
    if (!onward.has(meaningOfKeyword(keyword)?.soak)) continue;
    const planned = factOf(entry.record, 'duration') ?? factOf(entry.record, 'until');
    const suggestion = planned
      ? 'The end that was planned comes after that: write a “lift” record, or correct a date.'
      : 'Write a “lift” record, or the duration on the soak.';
    yield found(entry.line, 'lift-missing', subjectOf(entry),
      { batch: listed(batches.map(({ path }) => path), 'and'), next: keyword, date: isoOf(endEntry.moment.day), suggestion },
      { related: [relatedTo(endEntry, 'What came next')] });
  }
};
