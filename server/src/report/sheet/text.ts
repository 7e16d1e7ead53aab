import { plainPage } from '../page.ts';
import { printable } from '../printable.ts';
import { paragraph } from '../table.ts';
import { passageLines } from '../text.ts';
import type { Sheet } from './sheet.ts';

/** Sheets for a terminal. */
export function sheetText(sheets: readonly Sheet[], page = plainPage): string {
  const said = (text: string) => paragraph(printable(text), page.width).join('\n');
  return sheets.flatMap(({ title, lead, passages, notes }) => [
    page.bold(printable(title)),
    ...lead.map(said),
    ...passages.map(passage => passageLines(passage, page).slice(1).join('\n')),
    ...notes.map(said),
  ]).map(part => `${part}\n`).join('\n');
}
