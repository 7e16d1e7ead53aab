/** An answer of the planner as HTML, to stand beside the journal while one weighs. */
import { element, joined } from '../../pictures/markup.ts';
import type { MixAnswer } from '../../solutions/mix-plan.ts';
import { mixBlocks } from './text.ts';

export function mixHtml(title: string, answer: MixAnswer): string {
  const blocks = mixBlocks(answer).map(lines => element('section', {}, joined(lines.map(line => element('p', {}, line)))));
  return joined([element('h1', {}, title), ...blocks]).markup;
}
