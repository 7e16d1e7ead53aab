import { columnsOf } from './columns.ts';
import { printable } from './printable.ts';
import type { LotReport, Report } from './report.ts';
import { textTable } from './table.ts';
import { legend, notesOf, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Reports for a terminal: a table for each lot, without any control that a journal may hold. `heading` may paint. */
export function reportText(reports: readonly Report[], heading = (text: string): string => text): string {
  const parts = reports.flatMap(report => [
    printable(titleOf(report)),
    ...report.lots.map(lot => lotText(lot, report, heading)),
    ...warningsOf(report),
  ]);
  if (reports.some(({ lots }) => lots.length > 0)) parts.push(legend.join('\n'));
  return parts.map(part => `${part}\n`).join('\n');
}

function lotText(lot: LotReport, { now }: Report, heading: (text: string) => string): string {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot.lot);
  const columns = columnsOf(rowsOf(lot), now).map(column => ({ ...column, cells: column.cells.map(printable) }));
  return [
    heading(printable(plant === undefined ? id : `${id}  ${plant}`)),
    ...(facts.length > 0 ? [printable(facts.join(', '))] : []),
    ...textTable(columns).map(line => `  ${line}`),
    ...notesOf(lot).map(note => `  ${printable(note)}`),
  ].join('\n');
}
