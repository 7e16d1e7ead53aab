/** Labels on a sheet as it is sold, or on plain paper with lines to cut along. */
import { element, type Markup } from '../../pictures/markup.ts';
import { printable } from '../printable.ts';
import { labelSheets, type LabelSheet, type LabelSheetName } from './label-sheets.ts';
import type { Label } from './labels.ts';
import { documentOf } from '../document.ts';
import { text } from './text.ts';

/** Labels of one sheet. */
function labelsASheet(name: LabelSheetName): number {
  return labelSheets[name].columns * labelSheets[name].rows;
}

/** `skip`: labels of the first sheet that are used up already. */
export function labelsPage(labels: readonly Label[], name: LabelSheetName, skip = 0): string {
  const each = labelsASheet(name);
  const cells = [...Array.from({ length: skip % each }, () => undefined), ...labels];
  const pages = Array.from({ length: Math.ceil(cells.length / each) }, (_, n) => cells.slice(n * each, (n + 1) * each));
  return documentOf({
    title: 'Labels', style: styleOf(labelSheets[name]),
    body: pages.map(page => element('section', {}, ...page.map(labelBox))),
  });
}

function labelBox(label: Label | undefined): Markup {
  if (!label) return element('div', {});
  const { id, plant, treatment, date, place, slot } = label;
  return element(
    'div',
    { class: 'label' },
    text('strong', 'slot', slot),
    element('b', {}, printable(id)),
    text('i', 'plant', plant),
    text('span', 'treatment', treatment),
    text('span', 'date', [date, place].filter(each => each !== undefined).join(' · ')),
  );
}

/** A label too full loses its last words rather than the place of the next one. */
function styleOf({ paper, columns, rows, width, height, top, left, gap, lines }: LabelSheet): string {
  const cut = lines ? 'outline: .25mm dashed #777; outline-offset: -.125mm;' : '';
  return `
@page { size: ${paper}; margin: 0 }
* { box-sizing: border-box } body { margin: 0; font: 8pt/1.2 sans-serif; color: #000; background: #fff }
section { display: grid; grid-template: repeat(${rows}, ${height}mm) / repeat(${columns}, ${width}mm); column-gap: ${gap}mm;
  padding: ${top}mm 0 0 ${left}mm; break-inside: avoid }
section + section { break-before: page }
.label { padding: 2.5mm 4mm 2mm; overflow: hidden; overflow-wrap: anywhere; ${cut} }
.label > * { display: block } .label b { font-size: 13pt; line-height: 1.1 }
.slot { float: right; font-size: 26pt; line-height: 1; margin-left: 2mm } .treatment { font-weight: bold }
`;
}
