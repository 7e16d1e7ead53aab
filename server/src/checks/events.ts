/** The events of a lot by their type, so that each check sees only its own. */
import type { BatchEvent, Lot } from '../journal/life.ts';

type Type = BatchEvent['type'];
type EventOf<T extends Type> = BatchEvent & { readonly type: T };

export class Events {
  readonly #byType = new Map<Type, BatchEvent[]>();

  constructor({ batches }: Lot) {
    for (const batch of batches.values()) {
      for (const event of batch.events) {
        const same = this.#byType.get(event.type);
        if (same) same.push(event);
        else this.#byType.set(event.type, [event]);
      }
    }
  }

  /** Those of a type in the life of every batch, in the order of the batches, then of time; none is inherited. */
  of<T extends Type>(type: T): readonly EventOf<T>[] {
    return (this.#byType.get(type) ?? []) as EventOf<T>[];
  }
}
