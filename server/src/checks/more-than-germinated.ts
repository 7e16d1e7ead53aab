import { hasTotal, type CountEvent } from '../journal/life.ts';
import { overtaken } from '../journal/taken.ts';
import { isOrAre } from '../model/counted.ts';
import { found, type Found, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

const qualities = ['died', 'leggy', 'abnormal', 'stuck', 'freed'] as const;
const laterStages = ['emerged', 'leaf'] as const;

/** More seedlings died, are weak, or were pricked out than have germinated, or more left than there were. */
export const moreThanGerminated: LotCheck = function* (lot, _context, events) {
  for (const count of events.of('count')) if (mayBeTooMany(count)) yield* ofCount(count);
  if (events.of('pot').length + events.of('leave').length === 0) return;
  for (const batch of lot.batches.values()) {
    if (batch.unread) continue;
    for (const { event, fact, what, n, germinated } of overtaken(batch)) {
      yield found(event.entry.line, 'more-than-germinated', fact, valuesOf(n, what, batch.path, germinated));
    }
  }
};

/** A glance that spares most counts the rest. */
function mayBeTooMany(count: CountEvent): boolean {
  const { germinated } = count.after;
  return hasTotal(count) || qualities.some(what => count.after[what] > germinated);
}

function* ofCount({ batch: { path: batch }, entry, counts, before, after }: CountEvent): Iterable<Found> {
  const { line, record } = entry;
  for (const what of qualities) {
    if (after[what] <= after.germinated || after[what] === before[what]) continue;
    yield found(line, 'more-than-germinated', countSpan(record, [what]), valuesOf(after[what], what, batch, after.germinated));
  }
  // A total in the same record is not raised by what the later stages imply: the two contradict each other.
  const stated = counts.find(({ what, total }) => what === 'germinated' && total);
  if (!stated) return;
  for (const what of laterStages) {
    if (after[what] <= stated.n.value) continue;
    yield found(line, 'more-than-germinated', countSpan(record, [what]), valuesOf(after[what], what, batch, stated.n.value));
    return;
  }
}

function valuesOf(n: number, what: string, batch: string, germinated: number): Record<string, string | number> {
  return { n, what, batch, are: isOrAre(n), germinated };
}
