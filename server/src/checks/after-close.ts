import type { BatchEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { meaningOf } from '../model/events.ts';
import type { Countable } from '../model/record.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** Something is done to seed that was thrown away or cut open. Of the seedlings of a cut batch there is more to say. */
export const afterClose: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      const { entry, closedBy } = event;
      if (!closedBy || meaningOf(event).isRemark || event.type === 'misplaced') continue;
      if (closedBy.type === 'cut' && isOfSeedlings(event)) continue;
      yield found(entry.line, 'after-close', subjectOf(entry),
        { batch: batch.path, keyword: closedBy.entry.record.keyword, date: isoOf(closedBy.entry.moment.day) },
        { related: [relatedTo(closedBy.entry, 'Closed here')] });
    }
  }
};

const ofSeed: readonly Countable[] = ['germinated', 'rotted', 'lost'];

/** Whether a record can be about seedlings alone, which a cut test of the seed leaves alive. */
function isOfSeedlings(event: BatchEvent): boolean {
  const { about } = meaningOf(event);
  if (about !== 'both') return about !== 'seed';
  return event.type !== 'count' || ofSeed.every(what => event.after[what] === event.before[what]);
}
