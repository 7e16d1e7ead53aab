import { overtaken } from '../journal/taken.ts';
import { tooManySeedlings } from '../journal/wrong-numbers.ts';
import { isOrAre } from '../model/counted.ts';
import { found, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

/** More seedlings died, are weak, or were pricked out than have germinated, or more left than there were. */
export const moreThanGerminated: LotCheck = function* (lot, _context, events) {
  for (const count of events.of('count')) {
    const { batch: { path }, entry: { line, record } } = count;
    for (const { what, n, germinated } of tooManySeedlings(count)) {
      yield found(line, 'more-than-germinated', countSpan(record, [what]), valuesOf(n, what, path, germinated));
    }
  }
  if (events.of('pot').length + events.of('leave').length === 0) return;
  for (const batch of lot.batches.values()) {
    if (batch.unread) continue;
    for (const { event, fact, what, n, germinated } of overtaken(batch)) {
      yield found(event.entry.line, 'more-than-germinated', fact, valuesOf(n, what, batch.path, germinated));
    }
  }
};

function valuesOf(n: number, what: string, batch: string, germinated: number): Record<string, string | number> {
  return { n, what, batch, are: isOrAre(n), germinated };
}
