/** What lies where: on a day, in the course of time, and which slot is free. */
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { isForgotten } from '../journal/soaking.ts';
import type { Solution } from '../journal/solutions.ts';
import { once } from '../model/once.ts';
import { factOf } from '../model/record.ts';
import { listed } from '../syntax/nearest.ts';
import { emptiedAt } from './emptied.ts';
import { placeKey, slotOf } from './place-text.ts';
import { pottedText, unpottedText } from './potted.ts';
import { hasCome, standingOf } from './standing.ts';
import { staysOf, type Stay } from './stays.ts';

/** All that lies in one place. */
export interface PlaceNow {
  /** As written by the record that put the first of them there. */
  readonly place: string;
  readonly key: string;
  /** Undefined for a place that names no slot. */
  readonly slot: string | undefined;
  readonly stays: readonly Lying[];
}

export interface Lying extends Stay {
  /** What of the batch lies there, where that is not all of it. Example: 'not sown', '9 seedlings', '15 seeds' */
  readonly what: string | undefined;
}

/** A bag, a shelf, a box of the fridge: places with its slots, or itself as one place. */
export interface Container {
  /** As written; for a place without a slot the place itself. Empty where only slots are named. */
  readonly name: string;
  readonly key: string;
  readonly places: readonly PlaceNow[];
}

/** Numbers within texts by their size: bag 2 stands before bag 10. */
export const order = once(() => new Intl.Collator('en', { numeric: true }));

/** What lies where now, by container and slot. A stock stays where it was put until it is emptied. */
export function placesNow(journal: Journal, now: Moment): Container[] {
  const places = new Map<string, Lying[]>();
  const here = [...everyStay(journal, now)].filter(stay => isAt(stay, now));
  const potted = new Set(here.flatMap(({ id, part }) => (part === 'potted' ? [id] : [])));
  for (const each of here) {
    const stay = { ...each, what: whatOf(each, potted.has(each.id), now) };
    const key = placeKey(stay.place);
    const there = places.get(key);
    if (there) there.push(stay);
    else places.set(key, [stay]);
  }
  const containers = new Map<string, { name: string; places: PlaceNow[] }>();
  for (const [key, stays] of places) {
    const { place } = stays[0]!;
    const slot = slotOf(place);
    const name = slot ? slot.container : place;
    const container = containers.get(placeKey(name)) ?? { name, places: [] };
    const inOrder = stays.toSorted((a, b) => order().compare(a.id, b.id));
    container.places.push({ place, key, slot: slot?.slot, stays: inOrder });
    containers.set(placeKey(name), container);
  }
  return [...containers]
    .map(([key, { name, places: all }]) => ({ key, name, places: all.toSorted((a, b) => order().compare(a.slot ?? '', b.slot ?? '')) }))
    .sort((a, b) => order().compare(a.key, b.key));
}

function whatOf({ batch, part, place }: Stay, isPotted: boolean, now: Moment): string | undefined {
  if (part === 'rest') return 'not sown';
  if (!batch || !isPotted) return undefined;
  const standing = standingOf(batch, now);
  return part === 'potted' ? pottedText(standing, place) : unpottedText(standing);
}

/**
 * Where a batch lies now, by the stays of its lot, in the order in which it was put there; one that was sown in part
 * lies where that part does, and one of which seedlings were potted lies in both places.
 */
export function whereNow(stays: readonly Stay[], id: string, now: Moment): string[] {
  return placesOf(stays, id, now, ({ part }) => part !== 'rest');
}

/** Where to look for what comes up: of a batch of which seedlings were potted where the seed stayed. */
export function whereSeedNow(stays: readonly Stay[], id: string, now: Moment): string[] {
  return placesOf(stays, id, now, ({ part }) => part === 'all' || part === 'sown');
}

function placesOf(stays: readonly Stay[], id: string, now: Moment, isWanted: (stay: Stay) => boolean): string[] {
  const here = (byBatch(stays).get(id) ?? []).filter(stay => isAt(stay, now));
  const wanted = here.filter(isWanted);
  const places = new Map((wanted.length > 0 ? wanted : here).map(({ place }) => [placeKey(place), place]));
  return [...places.values()];
}

/** The stays of a lot are kept, and asked about for each of its batches. */
const known = new WeakMap<readonly Stay[], ReadonlyMap<string, readonly Stay[]>>();

function byBatch(stays: readonly Stay[]): ReadonlyMap<string, readonly Stay[]> {
  const kept = known.get(stays);
  if (kept) return kept;
  const batches = new Map<string, Stay[]>();
  for (const stay of stays) {
    const same = batches.get(stay.id);
    if (same) same.push(stay);
    else batches.set(stay.id, [stay]);
  }
  known.set(stays, batches);
  return batches;
}

/** Of one in two places the last that it was put in. */
export function placeNow(stays: readonly Stay[], id: string, now: Moment): string | undefined {
  return whereNow(stays, id, now).at(-1);
}

/** Undefined where no place is known. Example: whereText(['tray 1', 'tray 2']) is 'tray 1 and tray 2' */
export function whereText(places: readonly string[]): string | undefined {
  return places.length > 0 ? listed(places, 'and') : undefined;
}

/** All that ever lay in a place, the first first; a container without a slot has the stays of all its slots. */
export function historyOfPlace(journal: Journal, place: string): Stay[] {
  const key = placeKey(place);
  const within = (stay: Stay) => {
    const slot = slotOf(stay.place);
    return placeKey(stay.place) === key || (slot !== undefined && placeKey(slot.container) === key);
  };
  return [...everyStay(journal)].filter(within).sort((a, b) => dayOf(a) - dayOf(b));
}

/**
 * The first free slot of a container whose slots are numbered from 1; undefined for a container of which the journal
 * knows no numbered slot.
 *
 * Example: with bag 3 slots 1, 2 and 4 taken, nextFreeSlot(..., 'bag 3') is 'bag 3 slot 3'
 */
export function nextFreeSlot(journal: Journal, now: Moment, container: string): string | undefined {
  const key = placeKey(container);
  const taken = new Set<number>();
  let name: string | undefined;
  for (const stay of everyStay(journal, now)) {
    const slot = slotOf(stay.place);
    if (!slot || placeKey(slot.container) !== key || !/^\d+$/.test(slot.slot)) continue;
    name = slot.container;
    if (isAt(stay, now)) taken.add(Number(slot.slot));
  }
  if (name === undefined) return undefined;
  let free = 1;
  while (taken.has(free)) free++;
  return `${name} slot ${free}`.trim();
}

/** `now`: for what is to be known of stocks up to then. */
function* everyStay(journal: Journal, now?: Moment): Iterable<Stay> {
  for (const lot of journal.lots()) yield* staysOf(lot);
  for (const solution of journal.solutions()) {
    const stay = stayOfSolution(solution, now && emptiedAt(solution, journal, now));
    if (stay) yield stay;
  }
}

function stayOfSolution({ id, entry }: Solution, emptied: Moment | undefined): Stay | undefined {
  const fact = factOf(entry.record, 'at');
  if (!fact) return undefined;
  return {
    id, plant: undefined, batch: undefined, place: fact.value.text, from: entry.moment,
    to: emptied, toIsPlanned: false, soak: undefined, entry, fact, part: 'all',
  };
}

/** Seed whose soak should be over lies there until it is lifted, or until nobody would have left it in so long. */
function isAt({ from, to, toIsPlanned, soak }: Stay, now: Moment): boolean {
  if (soak && (!to || toIsPlanned) && isForgotten(soak, now)) return false;
  return (!from || hasCome(from, now)) && (!to || toIsPlanned || !hasCome(to, now));
}

function dayOf({ from }: Stay): number {
  return from?.day ?? -Infinity;
}
