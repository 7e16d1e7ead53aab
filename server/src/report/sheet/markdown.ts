import { escapeMarkdown, markdownBlocks, markdownList } from '../../features/markdown.ts';
import { passageBlocks } from '../markdown.ts';
import type { Sheet } from './sheet.ts';

/** Sheets as Markdown with their contents; whatever stands in a journal comes out as the characters written. */
export function sheetMarkdown(sheets: readonly Sheet[]): string {
  const several = sheets.length > 1;
  const blocks = sheets.flatMap(({ title, lead, passages, notes }) => [
    `# ${escapeMarkdown(title)}`,
    ...lead.map(escapeMarkdown),
    // Of several journals a heading would stand there twice, and a link could only reach the first.
    !several && passages.length > 1 ? markdownList(passages.map(({ heading }) => `[${escapeMarkdown(heading)}](#${anchorOf(heading)})`)) : undefined,
    ...passages.flatMap(passage => passageBlocks(passage, '##')),
    ...notes.map(escapeMarkdown),
  ]);
  return blocks.length > 0 ? `${markdownBlocks(blocks)}\n` : '';
}

/** The anchor that viewers of Markdown give a heading. Example: anchorOf('What paid') is 'what-paid' */
function anchorOf(heading: string): string {
  return heading.toLowerCase().replace(/[^\p{L}\p{N}\s-]/gu, '').replace(/\s/g, '-');
}
