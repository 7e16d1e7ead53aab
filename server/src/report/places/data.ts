/** What lies where as plain data for other programs; the README describes the shape. */
import { isoMoment } from '../../calendar/ask.ts';
import type { MapRow, PlacesMap } from './map.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const PLACES_SHAPE = 1;

export function placesData({ now, zone, containers, nowhere }: PlacesMap): object {
  return {
    now: isoMoment(now), zone: zone ?? null,
    containers: containers.map(({ name, rows }) => ({ name, contents: rows.map(rowData) })),
    withoutPlace: nowhere.map(({ path }) => path),
  };
}

function rowData({ slot, place, id, plant, part, what, treatment, since, stay: { entry: { line } } }: MapRow): object {
  return {
    place, slot: slot ?? null, id, plant: plant ?? null, part, what: what ?? null, treatment,
    since: since ? isoMoment(since) : null,
    file: line.store.name, line: line.number + 1,
  };
}
