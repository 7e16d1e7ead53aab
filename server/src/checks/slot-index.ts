/** Which lots have seed in which slots: what to check again across lots when one of them was edited. */
import { slotKeyOf } from '../calendar/place-text.ts';
import { staysOf, type Stay } from '../calendar/stays.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';

const none: ReadonlyMap<string, readonly Stay[]> = new Map();

export class SlotIndex {
  /** By lot and by slot. */
  readonly #stays = new Map<string, ReadonlyMap<string, readonly Stay[]>>();
  readonly #lotsIn = new Map<string, Set<string>>();

  /** Takes over what a lot says now; undefined where it is no more. Gives the slots in which something changed. */
  follow(id: string, lot: Lot | undefined): string[] {
    const before = this.#stays.get(id) ?? none;
    const now = lot ? bySlot(staysOf(lot)) : none;
    if (now.size > 0) this.#stays.set(id, now);
    else this.#stays.delete(id);
    const slots = before.size === 0 ? [...now.keys()] : [...new Set([...before.keys(), ...now.keys()])];
    const changed = slots.filter(slot => !isSame(before.get(slot), now.get(slot)));
    for (const slot of changed) {
      const lots = this.#lotsIn.get(slot) ?? new Set();
      if (now.has(slot)) lots.add(id);
      else lots.delete(id);
      if (lots.size > 0) this.#lotsIn.set(slot, lots);
      else this.#lotsIn.delete(slot);
    }
    return changed;
  }

  /** All stays in a slot, in no order. */
  staysIn(slot: string): Stay[] {
    return [...(this.#lotsIn.get(slot) ?? [])].flatMap(id => this.#stays.get(id)?.get(slot) ?? []);
  }
}

function bySlot(stays: readonly Stay[]): Map<string, Stay[]> {
  const found = new Map<string, Stay[]>();
  for (const stay of stays) {
    const key = slotKeyOf(stay.place);
    if (key === undefined) continue;
    const same = found.get(key);
    if (same) same.push(stay);
    else found.set(key, [stay]);
  }
  return found;
}

function isSame(before: readonly Stay[] | undefined, now: readonly Stay[] | undefined): boolean {
  return before !== undefined && before.length === now?.length && before.every((stay, i) => {
    const other = now[i]!;
    return stay.id === other.id && stay.entry.line === other.entry.line
      && isSameMoment(stay.from, other.from) && isSameMoment(stay.to, other.to);
  });
}

function isSameMoment(a: Moment | undefined, b: Moment | undefined): boolean {
  return a?.day === b?.day && a?.minutes === b?.minutes;
}
