import { columnsOf, type Column } from './columns.ts';
import { COURSES_LEGEND, courseColumns } from './courses.ts';
import { plainPage, type Page } from './page.ts';
import { trialPassages, type Passage } from './passages.ts';
import { plantPassages, untriedText } from './plant-passages.ts';
import { printable } from './printable.ts';
import type { LotReport, Report } from './report.ts';
import { foldColumns, paragraph, textTable } from './table.ts';
import { legendOf, notesOf, plantFacts, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Reports for a terminal: tables for each lot or plant, without any control that a journal may hold. */
export function reportText(reports: readonly Report[], page = plainPage): string {
  const parts = reports.flatMap(report => [
    printable(titleOf(report)),
    ...(report.plants
      ? plantTexts(report.plants, report.details, page)
      : report.lots.map(lot => lotText(lot, report, page))),
    ...warningsOf(report).map(warning => paragraph(warning, page.width).join('\n')),
  ]);
  const isDrawn = page.blocks && reports.some(({ lots, plants }) => (
    !plants && lots.some(lot => courseColumns(rowsOf(lot)).length > 0)));
  const legend = [...legendOf(reports), ...isDrawn ? [COURSES_LEGEND] : []];
  if (legend.length > 0) parts.push(legend.flatMap(text => paragraph(text, page.width)).join('\n'));
  return parts.map(part => `${part}\n`).join('\n');
}

function lotText(lot: LotReport, { now, details }: Report, page: Page): string {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot);
  return [
    page.bold(printable(plant === undefined ? id : `${id}  ${plant}`)),
    ...(facts.length > 0 ? paragraph(printable(facts.join(', ')), page.width) : []),
    ...tableLines(columnsOf(rowsOf(lot), now), page),
    ...(page.blocks ? coursesLines(lot, page) : []),
    ...notesOf(lot).flatMap(note => indented(note, page)),
    ...trialPassages(lot.trial, details).flatMap(passage => passageLines(passage, page)),
  ].join('\n');
}

/** With an empty line before it. */
function coursesLines(lot: LotReport, page: Page): string[] {
  const lines = tableLines(courseColumns(rowsOf(lot)), page);
  return lines.length > 0 ? ['', ...lines] : [];
}

function plantTexts({ plants }: NonNullable<Report['plants']>, details: boolean, page: Page): string[] {
  return plants.map(plant => {
    const untried = untriedText(plant);
    return [
      page.bold(printable(plant.plant)),
      ...paragraph(printable(plantFacts(plant)), page.width),
      ...plantPassages(plant, details).flatMap(passage => passageLines(passage, page)),
      ...(untried === undefined ? [] : ['', ...indented(untried, page)]),
    ].join('\n');
  });
}

/** A passage with an empty line before it. */
export function passageLines({ heading, columns, items, texts }: Passage, page: Page): string[] {
  return [
    '',
    ...indented(heading, page),
    ...tableLines(columns, page).map(line => (line === '' ? line : `  ${line}`)),
    ...items.flatMap(({ title, texts: said }) =>
      [...indented(title, page, 4), ...said.flatMap(text => indented(text, page, 6))]),
    ...texts.flatMap(text => indented(text, page, 4)),
  ];
}

/** A wide table goes on in a further one below it. */
function tableLines(columns: readonly Column[], { width }: Page): string[] {
  const safe = columns.map(({ head, kind, cells }) => ({ head: printable(head), kind, cells: cells.map(printable) }));
  return foldColumns(safe, width - 4).flatMap((table, i) => [...(i > 0 ? [''] : []), ...textTable(table).map(line => `  ${line}`)]);
}

function indented(text: string, { width }: Page, by = 2): string[] {
  return paragraph(printable(text), width - by).map(line => `${' '.repeat(by)}${line}`);
}
