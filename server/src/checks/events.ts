/** The events of a lot by their type, so that each check sees only its own. */
import type { BatchEvent, Lot } from '../journal/life.ts';
import { kindsWhere, type EventMeaning } from '../model/events.ts';
import { soaksOf, type SharedSoak } from './soaks.ts';

type Type = BatchEvent['type'];
type EventOf<T extends Type> = BatchEvent & { readonly type: T };

export class Events {
  readonly #byType = new Map<Type, BatchEvent[]>();
  readonly #lot: Lot;
  #soaks: readonly SharedSoak[] | undefined;

  constructor(lot: Lot) {
    this.#lot = lot;
    for (const batch of lot.batches.values()) {
      for (const event of batch.events) {
        const same = this.#byType.get(event.type);
        if (same) same.push(event);
        else this.#byType.set(event.type, [event]);
      }
    }
  }

  /** The soaks of all batches, see there. */
  get soaks(): readonly SharedSoak[] {
    return this.#soaks ??= soaksOf(this.#lot);
  }

  /** Those of a type in the life of every batch, in the order of the batches, then of time; none is inherited. */
  of<T extends Type>(type: T): readonly EventOf<T>[] {
    return (this.#byType.get(type) ?? []) as EventOf<T>[];
  }

  /** Those whose kind means something, by kind, then as in `of`. */
  where(holds: (meaning: EventMeaning) => boolean): readonly BatchEvent[] {
    return kindsWhere(holds).flatMap(type => this.of(type));
  }
}
