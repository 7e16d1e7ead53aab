import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../features/markdown.ts';
import { columnsOf, type Column } from './columns.ts';
import { trialPassages, type Item, type Passage } from './passages.ts';
import { plantPassages, untriedText } from './plant-passages.ts';
import type { LotReport, Report } from './report.ts';
import { foldColumns } from './table.ts';
import { legendOf, notesOf, plantFacts, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** A table that would be wider than this on a page goes on in a further one below it. */
const WIDTH = 100;

/** Reports as Markdown; whatever stands in a journal comes out as the characters that were written. */
export function reportMarkdown(reports: readonly Report[]): string {
  const blocks = reports.flatMap(report => [
    `# ${escapeMarkdown(titleOf(report))}`,
    ...(report.plants ? report.plants.plants.flatMap(plantBlocks) : report.lots.flatMap(lot => lotBlocks(lot, report))),
    ...warningsOf(report),
  ]);
  const legend = legendOf(reports);
  if (legend.length > 0) blocks.push(markdownList(legend.map(escapeMarkdown)));
  return blocks.length > 0 ? `${markdownBlocks(blocks)}\n` : '';
}

function lotBlocks(lot: LotReport, { now }: Report): (string | undefined)[] {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot.lot);
  const notes = notesOf(lot);
  return [
    `## ${escapeMarkdown(id)}${plant === undefined ? '' : ` ${escapeMarkdown(plant)}`}`,
    facts.length > 0 ? escapeMarkdown(facts.join(', ')) : undefined,
    ...tables(columnsOf(rowsOf(lot), now)),
    notes.length > 0 ? markdownList(notes.map(escapeMarkdown)) : undefined,
    ...trialPassages(lot.trial).flatMap(passageBlocks),
  ];
}

function plantBlocks(plant: Parameters<typeof plantPassages>[0]): (string | undefined)[] {
  const untried = untriedText(plant);
  return [
    `## ${escapeMarkdown(plant.plant)}`,
    escapeMarkdown(plantFacts(plant)),
    ...plantPassages(plant).flatMap(passageBlocks),
    untried && escapeMarkdown(untried),
  ];
}

function passageBlocks({ heading, columns, items, texts }: Passage): (string | undefined)[] {
  return [
    `### ${escapeMarkdown(heading)}`,
    ...tables(columns),
    items.length > 0 ? markdownList(items.map(itemLine)) : undefined,
    ...texts.map(escapeMarkdown),
  ];
}

function itemLine({ title, texts }: Item): string {
  return [`**${escapeMarkdown(title)}**`, ...texts.map(escapeMarkdown)].join('  \n  ');
}

function tables(columns: readonly Column[]): string[] {
  return foldColumns(columns, WIDTH).map(table => {
    const rows = table[0]!.cells.map((_, row) => table.map(({ kind, cells }) => {
      const cell = cells[row] ?? '';
      return kind === 'text' ? escapeMarkdown(cell) : cell;
    }));
    return markdownTable(table.map(({ head }) => escapeMarkdown(head)), rows);
  });
}
