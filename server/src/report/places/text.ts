import { plainPage } from '../page.ts';
import { printable } from '../printable.ts';
import { paragraph, textTable } from '../table.ts';
import type { PlacesMap } from './map.ts';
import { containerTitle, mapColumns, mapNotes, mapTitle } from './words.ts';

/** What lies where, for a terminal. */
export function placesText(maps: readonly PlacesMap[], { width, bold } = plainPage): string {
  return maps.flatMap(map => [
    printable(mapTitle(map)),
    ...map.containers.map(container => {
      const columns = mapColumns(container).map(column => ({ ...column, cells: column.cells.map(printable) }));
      return [bold(printable(containerTitle(container))), ...textTable(columns).map(line => `  ${line}`)].join('\n');
    }),
    ...mapNotes(map).map(note => paragraph(printable(note), width).join('\n')),
  ]).map(part => `${part}\n`).join('\n');
}
