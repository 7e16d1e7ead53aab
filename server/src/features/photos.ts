/** The photos that are recorded of a lot, and what is said of each. */
import type { Journal } from '../journal/journal.ts';
import { dayNumber, type Entry, type Lot } from '../journal/life.ts';
import { inOrder } from '../journal/order.ts';
import { isoOf } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { rootOf } from '../journal/mentions.ts';
import { lifeOf, plantOf } from './events.ts';
import { picturePath } from './links.ts';

export interface Photo {
  readonly entry: Entry;
  /** From the file of its record, with `/`; undefined for an address, and for a path from a root. */
  readonly path: string | undefined;
  /** The last part of its path as written. */
  readonly name: string;
}

/** By the lot and its batches that have some, in the order of time; those without a date last. */
export function photosOf(journal: Journal, { id, batches }: Lot): ReadonlyMap<string, readonly Photo[]> {
  const entries = journal.mentionsOf(id).filter(({ record: { keyword, subject } }) =>
    keyword === 'photo' && subject && rootOf(subject.text) === id);
  const all = [...inOrder(entries), ...entries.filter(({ moment }) => !moment)];
  const found = new Map<string, Photo[]>([...batches.keys()].map(path => [path, []]));
  for (const entry of all) {
    const written = factOf(entry.record, 'path')?.value.text;
    if (written === undefined) continue;
    const of = entry.record.subject!.text;
    const photo = { entry, path: picturePath(written), name: written.split(/[\\/]/).findLast(part => part !== '') ?? written };
    const own = found.get(of);
    if (own) own.push(photo);
    else found.set(of, [photo]);
  }
  return new Map([...found].filter(([, photos]) => photos.length > 0));
}

/** Example: 'Photo of PEN-26/A, Penstemon digitalis, 2026-11-22, day 14' */
export function photoCaption(entry: Entry, journal: Journal): string {
  const of = [`Photo of ${entry.record.subject?.text ?? ''}`, plantOf(journal, entry), photoDay(entry, journal)];
  return of.filter(text => text !== undefined).join(', ');
}

/** Undefined where the record has no date. Example: '2026-11-22, day 14' */
export function photoDay(entry: Entry, journal: Journal): string | undefined {
  if (!entry.moment) return undefined;
  const lived = lifeOf(journal, entry);
  const day = lived && dayNumber(lived.batch, entry.moment);
  return day === undefined || day < 0 ? isoOf(entry.moment.day) : `${isoOf(entry.moment.day)}, day ${day}`;
}
