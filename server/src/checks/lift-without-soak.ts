import { found, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** A `lift` of seed that is in no soak: never soaked, lifted before, or lifted earlier than it was put in. */
export const liftWithoutSoak: LotCheck = function* (_lot, _context, events) {
  for (const { batch, entry, soak, closedBy } of events.of('lift')) {
    if (soak || batch.unread || closedBy) continue;
    yield found(entry.line, 'lift-without-soak', subjectOf(entry), { batch: batch.path });
  }
};
