import { element, type Content } from '../../pictures/markup.ts';
import { pageOf, paragraph, passageContent } from '../html.ts';
import { printable } from '../printable.ts';
import type { Sheet } from './sheet.ts';

/** Sheets as one page that stands alone, with contents that lead to each passage. */
export function sheetPage(sheets: readonly Sheet[]): string {
  return pageOf(sheets.map(({ title }) => title).join('; ') || 'Report', sheets.flatMap(sheetBody), []);
}

function sheetBody({ title, lead, passages, notes }: Sheet, number: number): Content[] {
  const sections = passages.map((passage, i) => ({ id: `part-${number}-${i}`, passage }));
  const entries = sections.map(({ id, passage: { heading } }) =>
    element('li', {}, element('a', { href: `#${id}` }, printable(heading))));
  return [
    element('h1', {}, printable(title)),
    ...lead.map(paragraph),
    entries.length > 1 ? element('nav', { 'aria-label': 'Contents' }, element('ul', {}, ...entries)) : undefined,
    ...sections.map(({ id, passage }) =>
      element('section', { id }, element('h2', {}, printable(passage.heading)), ...passageContent(passage))),
    ...notes.map(paragraph),
  ];
}
