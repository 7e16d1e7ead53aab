import { found, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';
import { subjectOf } from './spans.ts';

/** A `lift` of seed that is in no soak: never soaked, lifted before, or lifted earlier than it was put in. */
export const liftWithoutSoak: LotCheck = function* (lot) {
  for (const { batch, event: { entry, soak, closedBy } } of eventsOf(lot, 'lift')) {
    if (soak || batch.unread || closedBy) continue;
    yield found(entry.line, 'lift-without-soak', subjectOf(entry), { batch: batch.path });
  }
};
