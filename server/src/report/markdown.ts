import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../features/markdown.ts';
import { columnsOf } from './columns.ts';
import type { LotReport, Report } from './report.ts';
import { legend, notesOf, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Reports as Markdown; whatever stands in a journal comes out as the characters that were written. */
export function reportMarkdown(reports: readonly Report[]): string {
  const blocks = reports.flatMap(report => [
    `# ${escapeMarkdown(titleOf(report))}`,
    ...report.lots.flatMap(lot => lotBlocks(lot, report)),
    ...warningsOf(report),
  ]);
  if (reports.some(({ lots }) => lots.length > 0)) blocks.push(markdownList(legend));
  return blocks.length > 0 ? `${markdownBlocks(blocks)}\n` : '';
}

function lotBlocks(lot: LotReport, { now }: Report): (string | undefined)[] {
  const { id, plant } = lot.lot;
  const facts = seedFacts(lot.lot);
  const notes = notesOf(lot);
  return [
    `## ${escapeMarkdown(id)}${plant === undefined ? '' : ` ${escapeMarkdown(plant)}`}`,
    facts.length > 0 ? escapeMarkdown(facts.join(', ')) : undefined,
    tableOf(rowsOf(lot), now),
    notes.length > 0 ? markdownList(notes.map(escapeMarkdown)) : undefined,
  ];
}

function tableOf(rows: ReturnType<typeof rowsOf>, now: Report['now']): string {
  const columns = columnsOf(rows, now);
  const cells = rows.map((_, row) => columns.map(column => {
    const cell = column.cells[row] ?? '';
    return column.kind === 'text' ? escapeMarkdown(cell) : cell;
  }));
  return markdownTable(columns.map(({ head }) => head), cells);
}
