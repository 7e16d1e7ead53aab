/** Photos in a row, by day: a row for the lot and for each batch that has some. */
import { photoCaption, photoDay, photosOf, type Photo } from '../../features/photos.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Lot } from '../../journal/life.ts';
import { element, type Content, type Markup } from '../../pictures/markup.ts';
import { printable } from '../printable.ts';

export interface PhotoShown {
  /** From the file of its record, with `/`; it may lead anywhere. Undefined where it is no path from there. */
  readonly path: string | undefined;
  /** The record that names it. */
  readonly line: JournalLine;
}

/** Whoever shows the page puts each picture in where it can be shown; until then its name stands there. */
export function photoRows(
  journal: Journal, lot: Lot, wayTo: (line: JournalLine) => string,
): { readonly rows: readonly Content[]; readonly photos: readonly PhotoShown[] } {
  const photos: PhotoShown[] = [];
  const rows = [...photosOf(journal, lot)].flatMap(([id, own]) => [
    element('h2', {}, printable(`Photos of ${id}`)),
    element('ul', { class: 'photos' }, ...own.map(cell)),
  ]);
  return { rows, photos };

  function cell({ entry, path, name }: Photo): Markup {
    const number = photos.push({ path, line: entry.line }) - 1;
    return element('li', {}, element('span', {
      'class': 'photo', 'role': 'link', 'tabindex': -1, 'data-way': wayTo(entry.line), 'data-photo': number,
      'aria-label': printable(`${photoCaption(entry, journal)}, ${name}`),
    },
    element('span', { class: 'name' }, printable(name)),
    element('span', { class: 'day' }, photoDay(entry, journal) ?? 'no date')));
  }
}
