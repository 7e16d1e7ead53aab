import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../features/markdown.ts';
import type { PlantTrial } from '../trials/plant-trial.ts';
import type { Lot } from '../journal/life.ts';
import { columnsOf, type Column } from './columns.ts';
import { trialPassages, type Item, type Passage } from './passages.ts';
import { plantPassages, untriedText } from './plant-passages.ts';
import type { LotReport, Report } from './report.ts';
import { foldColumns } from './table.ts';
import { legendOf, notesOf, plantFacts, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Characters of a table that stands in a preview beside the journal. */
const PAGE = 90;

export interface MarkdownOptions {
  /** Where the picture of a lot is; undefined where it has none. */
  readonly pictureOf?: (lot: Lot) => string | undefined;
}

/**
 * Reports as Markdown; whatever stands in a journal comes out as the characters that were written. A table that would
 * be wider than that goes on in a further one below it.
 */
export function reportMarkdown(reports: readonly Report[], { pictureOf }: MarkdownOptions = {}): string {
  const blocks = reports.flatMap(report => [
    `# ${escapeMarkdown(titleOf(report))}`,
    ...(report.plants
      ? report.plants.plants.flatMap(plant => plantBlocks(plant, report.details))
      : report.lots.flatMap(lot => lotBlocks(lot, report, pictureOf?.(lot.lot)))),
    ...warningsOf(report),
  ]);
  const legend = legendOf(reports);
  // The rule also parts the list from one that stands before it.
  if (legend.length > 0) blocks.push('---', markdownList(legend.map(escapeMarkdown)));
  return blocks.length > 0 ? `${markdownBlocks(blocks)}\n` : '';
}

/** Below a picture stands what was judged, then the table. */
function lotBlocks(lot: LotReport, { now, details }: Report, picture: string | undefined): (string | undefined)[] {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot);
  const notes = notesOf(lot);
  const passages = trialPassages(lot.trial, details);
  const first = picture !== undefined && lot.trial.contests.length > 0 ? passages.splice(0, 1) : [];
  return [
    `## ${escapeMarkdown(id)}${plant === undefined ? '' : ` ${escapeMarkdown(plant)}`}`,
    facts.length > 0 ? escapeMarkdown(facts.join(', ')) : undefined,
    picture && `![${escapeMarkdown(`Germination of ${id} over time`)}](${picture})`,
    ...first.flatMap(passage => passageBlocks(passage)),
    ...tables(columnsOf(rowsOf(lot), now)),
    notes.length > 0 ? markdownList(notes.map(escapeMarkdown)) : undefined,
    ...passages.flatMap(passage => passageBlocks(passage)),
  ];
}

function plantBlocks(plant: PlantTrial, details: boolean): (string | undefined)[] {
  const untried = untriedText(plant);
  return [
    `## ${escapeMarkdown(plant.plant)}`,
    escapeMarkdown(plantFacts(plant)),
    ...plantPassages(plant, details).flatMap(passage => passageBlocks(passage)),
    untried && escapeMarkdown(untried),
  ];
}

export function passageBlocks({ heading, columns, items, texts }: Passage, level = '###'): (string | undefined)[] {
  return [
    `${level} ${escapeMarkdown(heading)}`,
    ...tables(columns),
    items.length > 0 ? markdownList(items.map(itemLine)) : undefined,
    ...texts.map(escapeMarkdown),
  ];
}

function itemLine({ title, texts }: Item): string {
  return [`**${escapeMarkdown(title)}**`, ...texts.map(escapeMarkdown)].join('  \n  ');
}

function tables(columns: readonly Column[]): string[] {
  return foldColumns(columns, PAGE).map(table => {
    const rows = table[0]!.cells.map((_, row) => table.map(({ kind, cells }) => {
      const cell = cells[row] ?? '';
      return kind === 'text' ? escapeMarkdown(cell) : cell;
    }));
    return markdownTable(table.map(({ head }) => escapeMarkdown(head)), rows);
  });
}
