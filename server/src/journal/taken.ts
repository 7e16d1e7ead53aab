/** Seedlings that were pricked out or left, beside those that the counts of their batch know. */
import { factOf, type Fact } from '../model/record.ts';
import { countsOf, type Batch, type BatchEvent, type CountEvent, type Totals } from './life.ts';

/** A record that takes more seedlings than there were. */
export interface Overtaken {
  readonly event: BatchEvent;
  readonly fact: Fact;
  readonly what: 'potted seedlings' | 'seedlings that left';
  /** Taken so far, and how many there can have been. */
  readonly n: number;
  readonly germinated: number;
}

/** Records of a batch that take more seedlings than have germinated; of a batch with no counts none. */
export function* overtaken(batch: Batch): Iterable<Overtaken> {
  const counts = countsOf(batch);
  const last = counts.at(-1)?.after;
  if (!last) return;
  // Counts up to the event, and up to the end of its day.
  let [before, byDay, left] = [0, 0, 0];
  for (const event of batch.events) {
    const fact = factOf(event.entry.record, 'seedlings');
    if (event.type === 'count') before++;
    else if (event.type === 'pot') {
      while (byDay < counts.length && counts[byDay]!.entry.moment.day <= event.entry.moment.day) byDay++;
      const { germinated } = by(counts, byDay) ?? last;
      if (fact && fact.n.value > germinated) yield { event, fact, what: 'potted seedlings', n: fact.n.value, germinated };
    } else if (event.type === 'leave') {
      // Those that had left before are not there any more.
      left += event.seedlings;
      const after = by(counts, before) ?? last;
      const germinated = after.germinated - after.died;
      if (event.seedlings > 0 && fact && left > germinated) {
        yield { event, fact, what: 'seedlings that left', n: left, germinated };
      }
    }
  }
}

/**
 * What the first so many counts came to; undefined before the first. Seedlings that were taken before anybody counted
 * have germinated too, so that the counts that follow must hold them; who never counts may still pot.
 */
function by(counts: readonly CountEvent[], so: number): Totals | undefined {
  return counts[so - 1]?.after;
}
