/** Where seed lay, and how long it was wet: what a careful reader asks of two sides beside their treatment. */
import type { Batch, BatchEvent } from '../journal/life.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import type { Range } from './alike.ts';

/** What holds seed says nothing of how warm or light it is there, and neither does a number. */
const VESSELS = /\b(?:bag|jar|tray|pot|dish|slot|box|row|cell|module|plug|pan|tin|envelope|vial|no)s?\b|[\d.#/-]+/giu;

/**
 * A place without its vessel and without numbers.
 *
 * Example: roomOf('heated mat tray 4') is 'heated mat'; of 'tray 4' and 'bag 3 slot 1' it is undefined
 */
export function roomOf(place: string): string | undefined {
  const room = place.toLowerCase().replace(/["“”]/g, '').replace(VESSELS, ' ').replace(/\s+/g, ' ').trim();
  return room.length > 0 ? room : undefined;
}

/** The rooms in which seed lay up to an age in days from day 0, each once; a soak's vessel is none. */
export function roomsOf(life: readonly BatchEvent[], dayZero: number): readonly Stay[] {
  return life.flatMap(event => {
    const { place, about } = meaningOf(event);
    // What is pricked out has germinated; the seed stays where it was.
    if ((place !== 'sowing' && place !== 'move') || about === 'seedlings') return [];
    const at = factOf(event.entry.record, 'at')?.value.text;
    const room = at === undefined ? undefined : roomOf(at);
    return room === undefined ? [] : [{ room, day: event.entry.moment.day - dayZero }];
  });
}

export interface Stay {
  readonly room: string;
  /** From day 0. */
  readonly day: number;
}

/** The rooms of two sides, if they are not the same; undefined if they are, or if those of one are not known. */
export function roomsApart(a: readonly Stay[], b: readonly Stay[], age: number): string | undefined {
  const [first, second] = [roomsBy(a, age), roomsBy(b, age)];
  if (first.size === 0 || second.size === 0) return undefined;
  if (first.size === second.size && [...first].every(room => second.has(room))) return undefined;
  return `${[...first].join(', then ')} against ${[...second].join(', then ')}`;
}

function roomsBy(stays: readonly Stay[], age: number): ReadonlySet<string> {
  return new Set(stays.filter(({ day }) => day < age).map(({ room }) => room));
}

/** Minutes in all of its soaks together; undefined where the length of one is not known, or where it had none. */
export function minutesWet(soaks: Batch['soaks']): Range | undefined {
  if (soaks.length === 0) return undefined;
  const all = { least: 0, most: 0 };
  for (const { length, endedBy } of soaks) {
    if (!length || endedBy === 'next') return undefined;
    all.least += length.least;
    all.most += length.most;
  }
  return all;
}
