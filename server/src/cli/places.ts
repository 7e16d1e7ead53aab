import { version } from '../../../package.json';
import type { Moment } from '../journal/moment.ts';
import { placesData, PLACES_SHAPE } from '../report/places/data.ts';
import { placesMap, type PlacesMap } from '../report/places/map.ts';
import { placesMarkdown } from '../report/places/markdown.ts';
import { placesSheet } from '../report/places/sheet.ts';
import { placesText } from '../report/places/text.ts';
import { printableJson } from '../report/printable.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals, type Opening } from './open.ts';
import { complainOf, outputPage, print } from './output.ts';

export interface PlacesOptions {
  readonly format: 'text' | 'json' | 'md' | 'html';
  readonly today?: Moment;
  readonly asOf?: Moment;
}

/** `plumule report --places`: prints what lies where. */
export async function reportPlaces(paths: readonly string[], { format, today, asOf }: PlacesOptions): Promise<Exit> {
  const opening = await openJournals(paths, asOf ?? today, asOf?.day);
  const { journals, unread } = opening;
  const maps = journals.map(({ journal, asked, folder, now }) =>
    placesMap(journal, { now, files: asked, ...(journals.length > 1 && { name: folder }) }));
  print(written(format, maps, opening));
  complainOf(unread);
  return unread.length > 0 ? exits.unread : exits.clean;
}

function written(format: PlacesOptions['format'], maps: readonly PlacesMap[], { journals, unread }: Opening): string {
  switch (format) {
    case 'text': return placesText(maps, outputPage());
    case 'md': return placesMarkdown(maps);
    case 'html': return placesSheet(maps);
    case 'json': {
      const told = maps.map((map, i) => ({ files: journals[i]!.asked, ...placesData(map) }));
      return printableJson({ version: PLACES_SHAPE, plumule: version, journals: told, unread });
    }
  }
}
