/** Seedlings that were pricked out or left, beside those that the counts of their batch know. */
import { factOf, type Fact } from '../model/record.ts';
import { countsOf, type Batch, type BatchEvent, type CountEvent, type LeaveEvent, type Totals } from './life.ts';

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
  for (const event of batch.events) {
    if (event.type === 'pot') yield* overPotted(batch, event);
    else if (event.type === 'leave') yield* overLeft(batch, event);
  }
}

function* overPotted(batch: Batch, event: BatchEvent): Iterable<Overtaken> {
  const fact = factOf(event.entry.record, 'seedlings');
  const counted = countBy(batch, ({ entry: { moment: { day } } }) => day <= event.entry.moment.day);
  if (!fact || !counted || fact.n.value <= counted.germinated) return;
  yield { event, fact, what: 'potted seedlings', n: fact.n.value, germinated: counted.germinated };
}

/** Those that had left before are not there any more. */
function* overLeft(batch: Batch, event: LeaveEvent): Iterable<Overtaken> {
  const fact = factOf(event.entry.record, 'seedlings');
  const upTo = batch.events.slice(0, batch.events.indexOf(event) + 1);
  const counted = countBy(batch, count => upTo.includes(count));
  if (event.seedlings === 0 || !fact || !counted) return;
  const n = upTo.reduce((all, each) => all + (each.type === 'leave' ? each.seedlings : 0), 0);
  const germinated = counted.germinated - counted.died;
  if (n > germinated) yield { event, fact, what: 'seedlings that left', n, germinated };
}

/**
 * What was counted by then. Seedlings that were taken before anybody counted have germinated too, so that the counts
 * that follow must hold them; who never counts may still pot.
 */
function countBy(batch: Batch, isByThen: (event: CountEvent) => boolean): Totals | undefined {
  const counts = countsOf(batch);
  return (counts.findLast(isByThen) ?? counts.at(-1))?.after;
}
