/** A photo: what it is of. Whether the picture itself may be shown is for those to say who know the files. */
import { picturePath } from '../links.ts';
import { photoCaption } from '../photos.ts';
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
  return { path: picturePath(thing.fact.value.text), caption: photoCaption(thing.entry, journal) };
}
