/** Notes, remarks and photos of a lot, of a journal that has them. */
import { remarksBelow } from '../words/remarks.ts';
import type { Journal } from '../journal/journal.ts';
import { inJournalOrder } from '../journal/journal-file.ts';
import { rootOf } from '../journal/mentions.ts';
import { isoOf, type Day } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { element, type Markup } from '../pictures/markup.ts';
import { printable } from '../report/printable.ts';

export interface Entry {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  readonly lot: string;
  /** A lot or a batch. */
  readonly id: string;
  readonly day: Day | undefined;
  readonly texts: readonly string[];
  /** As written in the record, from its file. */
  readonly photo: string | undefined;
}

/** In the order of time; without a date first. */
export function entriesOf(journal: Journal): Entry[] {
  const lines = [...journal.lots()].flatMap(({ id }) => journal.mentionsOf(id)
    .filter(({ record }) => record.subject && rootOf(record.subject.text) === id).map(({ line }) => line));
  return inJournalOrder(new Set(lines)).flatMap(line => {
    const { record, moment } = journal.entryAt(line)!;
    const texts = [factOf(record, 'text')?.value.text, remarksBelow(line)].filter(text => text !== undefined);
    const photo = factOf(record, 'path')?.value.text;
    if (texts.length === 0 && photo === undefined) return [];
    const id = record.subject!.text;
    return [{ file: line.store.name, line: line.number + 1, lot: rootOf(id), id, day: moment?.day, texts, photo }];
  }).sort((a, b) => (a.day ?? -Infinity) - (b.day ?? -Infinity));
}

/** Nothing where there is nothing to tell. */
export function diaryOf(
  entries: readonly Entry[], photoAt: (file: string, line: number) => string | undefined,
): Markup[] {
  const items = entries.flatMap(({ file, line, id, day, texts, photo }) => {
    const copy = photo === undefined ? undefined : photoAt(file, line);
    if (texts.length === 0 && copy === undefined) return [];
    const head = printable(day === undefined ? id : `${isoOf(day)} ${id}`);
    const image = copy && element('img', { src: copy, alt: `Photo, ${head}`, loading: 'lazy' });
    return [element('li', {}, element('b', {}, head),
      ...texts.flatMap(text => text.split('\n')).map(text => element('p', {}, printable(text))),
      image && element('figure', {}, image))];
  });
  return items.length === 0 ? [] : [element('h3', {}, 'Diary'), element('ul', {}, ...items)];
}
