/** A photo: what it is of. Whether the picture itself may be shown is for those to say who know the files. */
import type { Journal } from '../../journal/journal.ts';
import { dayNumber, type Entry } from '../../journal/life.ts';
import { isoOf } from '../../model/day.ts';
import { lifeOf, plantOf } from '../events.ts';
import { picturePath } from '../links.ts';
import type { Thing } from '../thing.ts';
import type { HoverContext } from './section.ts';

export interface Picture {
  /** With `/`, as seen from the journal's own file; undefined for an address, and for a path from a root. */
  readonly path: string | undefined;
  /** In words, for who cannot see it. Journal text, not escaped. */
  readonly caption: string;
}

/** The picture that a `photo` record names, over its path. */
export function pictureAt(thing: Thing, { journal }: HoverContext): Picture | undefined {
  if (thing.kind !== 'fact' || thing.fact.type !== 'path') return undefined;
  return { path: picturePath(thing.fact.value.text), caption: captionOf(thing.entry, journal) };
}

/** Example: 'Photo of PEN-26/A, Penstemon digitalis, 2026-11-22, day 14' */
function captionOf(entry: Entry, journal: Journal): string {
  const { record: { subject }, moment } = entry;
  const lived = lifeOf(journal, entry);
  const day = lived && moment && dayNumber(lived.batch, moment);
  return [
    `Photo of ${subject?.text ?? ''}`, plantOf(journal, entry), moment && isoOf(moment.day),
    day === undefined || day < 0 ? undefined : `day ${day}`,
  ].filter(text => text !== undefined).join(', ');
}
