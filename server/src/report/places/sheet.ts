/**
 * What lies where as a sheet to print and pin up: ink smudges on damp towel, and the number on the bag is all there is.
 */
import { PAGE_POLICY } from '../html-style.ts';
import { printable } from '../printable.ts';
import type { MapContainer, MapRow, PlacesMap } from './map.ts';
import { containerTitle, contentText, mapNotes, mapTitle, sinceText } from './words.ts';

/** Numbers are to be read from the other side of the table; no bag is torn apart between two pages. */
const STYLE = `
@page { margin: 12mm }
body { font: 12pt/1.3 sans-serif; color: #000; background: #fff; margin: 1em }
h1 { font-size: 14pt; font-weight: normal }
section { break-inside: avoid; border: 1.5pt solid #000; margin: 0 0 6mm; padding: 2mm 4mm }
h2 { font-size: 32pt; line-height: 1.1; margin: 0; overflow-wrap: anywhere }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: baseline; padding: 1mm 3mm 1mm 0; border-top: .5pt solid #000 }
th { width: 3em; font-size: 28pt; line-height: 1.1; overflow-wrap: anywhere }
td { overflow-wrap: anywhere }
b { font-size: 18pt }
`;

const POLICY = `<meta http-equiv="Content-Security-Policy" content="${PAGE_POLICY}">`;

/** One page of HTML for all maps: no script, nothing loaded from anywhere, text of the journal escaped. */
export function placesSheet(maps: readonly PlacesMap[]): string {
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    `<head><meta charset="utf-8">${POLICY}`,
    `<title>${html(maps.map(mapTitle).join('; ') || 'Places')}</title><style>${STYLE}</style></head>`,
    '<body>',
    ...maps.flatMap(map => [
      `<h1>${html(mapTitle(map))}</h1>`, ...map.containers.flatMap(sectionOf), ...mapNotes(map).map(note => `<p>${html(note)}</p>`),
    ]),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function sectionOf(container: MapContainer): string[] {
  const slotted = container.rows.some(({ slot }) => slot !== undefined);
  return [
    '<section>', `<h2>${html(containerTitle(container))}</h2>`, '<table>',
    ...container.rows.map(row => rowOf(row, slotted)), '</table>', '</section>',
  ];
}

function rowOf(row: MapRow, slotted: boolean): string {
  const { slot, plant, treatment } = row;
  const facts = [plant, treatment, `since ${sinceText(row)}`].filter(fact => fact !== undefined);
  const number = slotted ? `<th scope="row">${html(slot ?? '–')}</th>` : '';
  return `<tr>${number}<td><b>${html(contentText(row))}</b><br>${facts.map(html).join('<br>')}</td></tr>`;
}

function html(text: string): string {
  return printable(text).replace(/[&<>"']/g, sign => `&#${sign.charCodeAt(0)};`);
}
