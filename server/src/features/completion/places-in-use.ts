/** The places where batches and stocks lie on a day, and the numbered slots that are taken. */
import { placeKey, slotOf } from '../../calendar/place-text.ts';
import { placeNow } from '../../calendar/places.ts';
import { staysOf } from '../../calendar/stays.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Day } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { gathered, lotMemo, numbered } from '../gathered.ts';

/** A numbered slot of a container. */
interface Slot {
  readonly key: string;
  readonly number: number;
}

export interface InUse {
  /** What lies there, each with the place as it is written there. */
  readonly ids: Map<string, string>;
  readonly slot: Slot | undefined;
  /** To be put in order: numbers by their size. */
  readonly sort: string;
}

interface Places {
  readonly places: Map<string, InUse>;
  /** By container the slots that are taken, each by its number. */
  readonly slots: Map<string, Map<number, InUse>>;
}

interface Where {
  readonly path: string;
  /** As written. */
  readonly place: string;
  readonly key: string;
}

export const placesInUse: (journal: Journal, day: Day) => Places = gathered<readonly Where[], Places>({
  begin: () => ({ places: new Map(), slots: new Map() }),
  part: (id, journal, day) => {
    const all = [...ofLot(id, journal, day), ...ofStock(id, journal)];
    return all.length === 0 ? undefined : all;
  },
  add: (whole, all) => all.forEach(where => put(whole, where)),
  take: (whole, all) => all.forEach(where => remove(whole, where)),
});

function put({ places, slots }: Places, { path, place, key }: Where): void {
  const used = places.get(key);
  if (used) {
    used.ids.set(path, place);
    return;
  }
  const slot = numberedSlot(place);
  const fresh = { ids: new Map([[path, place]]), slot, sort: numbered(key) };
  places.set(key, fresh);
  if (!slot) return;
  const taken = slots.get(slot.key);
  if (taken) taken.set(slot.number, fresh);
  else slots.set(slot.key, new Map([[slot.number, fresh]]));
}

function remove({ places, slots }: Places, { path, key }: Where): void {
  const used = places.get(key);
  used?.ids.delete(path);
  if (used?.ids.size !== 0) return;
  places.delete(key);
  if (!used.slot) return;
  const taken = slots.get(used.slot.key);
  taken?.delete(used.slot.number);
  if (taken?.size === 0) slots.delete(used.slot.key);
}

function numberedSlot(place: string): Slot | undefined {
  const slot = slotOf(place);
  return slot && /^\d+$/.test(slot.slot) ? { key: placeKey(slot.container), number: Number(slot.slot) } : undefined;
}

function ofLot(id: string, journal: Journal, day: Day): readonly Where[] {
  const lot = journal.lot(id);
  return lot ? lying(lot, day) : [];
}

/** Where the batches of a lot lie. */
const lying = lotMemo((lot, day): Where[] => {
  const stays = staysOf(lot);
  return Array.from(lot.batches.keys()).flatMap(path => {
    const place = placeNow(stays, path, { day, minutes: undefined });
    return place === undefined ? [] : [{ path, place, key: placeKey(place) }];
  });
});

function ofStock(id: string, journal: Journal): Where[] {
  const record = journal.solution(id)?.entry.record;
  const place = record && factOf(record, 'at')?.value.text;
  return place === undefined ? [] : [{ path: id, place, key: placeKey(place) }];
}
