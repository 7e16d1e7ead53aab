/** The map of places in words, the same in text, in Markdown and on the sheet. */
import type { Column } from '../columns.ts';
import { isoOf } from '../../model/day.ts';
import { printMoment } from '../../journal/moment.ts';
import type { MapContainer, MapRow, PlacesMap } from './map.ts';

export function mapTitle({ name, now }: PlacesMap): string {
  return `Places${name === undefined ? '' : ` in ${name}`} as of ${printMoment(now)}`;
}

export function containerTitle({ name }: MapContainer): string {
  return name === '' ? 'Slots' : name;
}

/** Example: 'PAR-26/A', 'PAR-26/A (not sown)' for what a sowing left over, 'PAR-26/A (9 seedlings)' */
export function contentText({ id, what }: Pick<MapRow, 'id' | 'what'>): string {
  return what === undefined ? id : `${id} (${what})`;
}

export function sinceText({ since }: MapRow): string {
  return since === undefined ? '–' : isoOf(since.day);
}

/** The columns of a container; one that has no slots has no column for them. */
export function mapColumns({ rows }: MapContainer): Column[] {
  const column = (head: string, cell: (row: MapRow) => string): Column => ({ head, kind: 'text', cells: rows.map(cell) });
  return [
    ...(rows.some(({ slot }) => slot !== undefined) ? [column('Slot', ({ slot }) => slot ?? '–')] : []),
    column('What', contentText),
    column('Plant', ({ plant }) => plant ?? ''),
    column('Treatment', ({ treatment }) => treatment),
    column('Since', sinceText),
  ];
}

/** What has to be known beside the tables. */
export function mapNotes({ containers, nowhere }: PlacesMap): string[] {
  return [
    ...(containers.length === 0 ? ['No record puts anything anywhere.'] : []),
    ...(nowhere.length > 0 ? [`No record gives a place for ${nowhere.map(({ path }) => path).join(', ')}.`] : []),
  ];
}
