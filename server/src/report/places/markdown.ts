import { escapeMarkdown, markdownBlocks, markdownTable } from '../../features/markdown.ts';
import type { MapContainer, PlacesMap } from './map.ts';
import { containerTitle, mapColumns, mapNotes, mapTitle } from './words.ts';

/** What lies where, as Markdown; text of the journal comes out as the characters that were written. */
export function placesMarkdown(maps: readonly PlacesMap[]): string {
  const blocks = maps.flatMap(map => [
    `# ${escapeMarkdown(mapTitle(map))}`,
    ...map.containers.flatMap(container => [`## ${escapeMarkdown(containerTitle(container))}`, table(container)]),
    ...mapNotes(map).map(escapeMarkdown),
  ]);
  return blocks.length > 0 ? `${markdownBlocks(blocks)}\n` : '';
}

function table(container: MapContainer): string {
  const columns = mapColumns(container);
  const rows = container.rows.map((_, row) => columns.map(({ cells }) => escapeMarkdown(cells[row]!)));
  return markdownTable(columns.map(({ head }) => head), rows);
}
