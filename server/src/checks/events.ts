import type { Batch, BatchEvent, Lot } from '../journal/life.ts';

type EventOf<Type extends BatchEvent['type']> = BatchEvent & { readonly type: Type };

/** The events of some types in the life of every batch of a lot, each once. */
export function* eventsOf<Type extends BatchEvent['type']>(
  { batches }: Lot, ...types: readonly Type[]
): Generator<{ readonly batch: Batch; readonly event: EventOf<Type> }> {
  const wanted: ReadonlySet<BatchEvent['type']> = new Set(types);
  for (const batch of batches.values()) {
    for (const event of batch.events) if (wanted.has(event.type)) yield { batch, event: event as EventOf<Type> };
  }
}
