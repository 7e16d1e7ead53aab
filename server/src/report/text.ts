import { columnsOf, type Column } from './columns.ts';
import { trialPassages, type Passage } from './passages.ts';
import { plantPassages, untriedText } from './plant-passages.ts';
import { printable } from './printable.ts';
import type { LotReport, Report } from './report.ts';
import { foldColumns, paragraph, textTable } from './table.ts';
import { legendOf, notesOf, plantFacts, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Lines are no wider than this where the words of the journal allow it. */
const WIDTH = 100;

type Paint = (text: string) => string;

/** Reports for a terminal: tables for each lot or plant, without any control that a journal may hold. */
export function reportText(reports: readonly Report[], heading: Paint = text => text): string {
  const parts = reports.flatMap(report => [
    printable(titleOf(report)),
    ...(report.plants ? plantTexts(report.plants, heading) : report.lots.map(lot => lotText(lot, report, heading))),
    ...warningsOf(report).map(warning => paragraph(warning, WIDTH).join('\n')),
  ]);
  const legend = legendOf(reports);
  if (legend.length > 0) parts.push(legend.flatMap(text => paragraph(text, WIDTH)).join('\n'));
  return parts.map(part => `${part}\n`).join('\n');
}

function lotText(lot: LotReport, { now }: Report, heading: Paint): string {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot.lot);
  return [
    heading(printable(plant === undefined ? id : `${id}  ${plant}`)),
    ...(facts.length > 0 ? paragraph(printable(facts.join(', ')), WIDTH) : []),
    ...tableLines(columnsOf(rowsOf(lot), now)),
    ...notesOf(lot).flatMap(note => indented(note)),
    ...trialPassages(lot.trial).flatMap(passageLines),
  ].join('\n');
}

function plantTexts({ plants }: NonNullable<Report['plants']>, heading: Paint): string[] {
  return plants.map(plant => {
    const untried = untriedText(plant);
    return [
      heading(printable(plant.plant)),
      ...paragraph(printable(plantFacts(plant)), WIDTH),
      ...plantPassages(plant).flatMap(passageLines),
      ...(untried === undefined ? [] : ['', ...indented(untried)]),
    ].join('\n');
  });
}

function passageLines({ heading, columns, items, texts }: Passage): string[] {
  return [
    '',
    ...indented(heading),
    ...tableLines(columns).map(line => (line === '' ? line : `  ${line}`)),
    ...items.flatMap(({ title, texts: said }) => [...indented(title, 4), ...said.flatMap(text => indented(text, 6))]),
    ...texts.flatMap(text => indented(text, 4)),
  ];
}

/** A wide table goes on in a further one below it. */
function tableLines(columns: readonly Column[]): string[] {
  const safe = columns.map(({ head, kind, cells }) => ({ head: printable(head), kind, cells: cells.map(printable) }));
  return foldColumns(safe, WIDTH - 4).flatMap((table, i) => [...(i > 0 ? [''] : []), ...textTable(table).map(line => `  ${line}`)]);
}

function indented(text: string, by = 2): string[] {
  return paragraph(printable(text), WIDTH - by).map(line => `${' '.repeat(by)}${line}`);
}
