/** Places to choose from: the next free slot of what has slots, then what is in use, the most used first. */
import { placeKey, slotOf } from '../../calendar/place-text.ts';
import { order, placeNow } from '../../calendar/places.ts';
import { staysOf } from '../../calendar/stays.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Day } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { best } from './best.ts';
import { lotMemo } from './lot-memo.ts';
import type { Scene } from './scene.ts';
import { MOST, type Suggestion } from './suggestion.ts';

interface Place {
  /** As written. */
  readonly place: string;
  readonly key: string;
  /** Undefined where no numbered slot is named. */
  readonly slot: { readonly container: string; readonly key: string; readonly number: number } | undefined;
}

interface Used extends Place {
  readonly ids: string[];
}

/** What lies in a place is told by these names, then by a number. */
const NAMES = 3;

export function places(scene: Scene): Suggestion[] {
  const used = placesInUse(scene.journal, scene.now.day).filter(each => !isOwn(each, scene));
  const byUse = (a: Used, b: Used) => b.ids.length - a.ids.length || order.compare(a.place, b.place);
  return [
    ...freeSlots(used).map((place): Suggestion => ({ kind: 'place', label: place, detail: 'the next free slot' })),
    ...best(used, MOST, byUse).map(({ place, ids }): Suggestion => ({ kind: 'place', label: place, detail: lying(ids) })),
  ];
}

/** What this line itself says is no help in writing it. */
function isOwn({ key, ids }: Used, { entry }: Scene): boolean {
  const own = entry && factOf(entry.record, 'at')?.value.text;
  return own !== undefined && ids.length === 1 && placeKey(own) === key;
}

/** Example: lying(['D-4', 'A-1', 'C-3', 'B-2']) is 'A-1, B-2 and 2 more' */
function lying(ids: readonly string[]): string {
  const names = best(ids, ids.length > NAMES ? NAMES - 1 : NAMES, (a, b) => (a < b ? -1 : 1));
  return names.length === ids.length ? names.join(', ') : `${names.join(', ')} and ${ids.length - names.length} more`;
}

/** Of each container whose slots are numbered, the fullest first. */
function freeSlots(used: readonly Used[]): string[] {
  const containers = new Map<string, { readonly name: string; readonly taken: Set<number> }>();
  for (const { slot } of used) {
    if (!slot) continue;
    const container = containers.get(slot.key);
    if (container) container.taken.add(slot.number);
    else containers.set(slot.key, { name: slot.container, taken: new Set([slot.number]) });
  }
  return [...containers.values()].sort((a, b) => b.taken.size - a.taken.size || order.compare(a.name, b.name))
    .map(({ name, taken }) => {
      let free = 1;
      while (taken.has(free)) free++;
      return `${name} slot ${free}`.trim();
    });
}

function placesInUse(journal: Journal, day: Day): Used[] {
  const places = new Map<string, Used>();
  const put = (where: Where) => {
    const used = places.get(where.key);
    if (used) used.ids.push(where.path);
    else places.set(where.key, { ...where, ids: [where.path] });
  };
  for (const where of memo(journal, day)) where.forEach(put);
  for (const { id, entry } of journal.solutions()) {
    const place = factOf(entry.record, 'at')?.value.text;
    if (place !== undefined) put({ path: id, ...placeOf(place) });
  }
  return [...places.values()];
}

interface Where extends Place {
  readonly path: string;
}

function placeOf(place: string): Place {
  const key = placeKey(place);
  const slot = slotOf(place);
  if (!slot || !/^\d+$/.test(slot.slot)) return { place, key, slot: undefined };
  const { container } = slot;
  return { place, key, slot: { container, key: placeKey(container), number: Number(slot.slot) } };
}

/** Where the batches of a lot lie on a day. */
const memo = lotMemo((lot, day): Where[] => {
  const stays = staysOf(lot);
  return Array.from(lot.batches.keys()).flatMap(path => {
    const place = placeNow(stays, path, { day, minutes: undefined });
    return place === undefined ? [] : [{ path, ...placeOf(place) }];
  });
});
