/** A recipe of the bench: numbered steps, and what to do where the tools are too coarse. */
import type { Assumption } from '../../solutions/assumptions.ts';
import type { Recipe } from '../../solutions/recipe.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';

/** What it takes for granted, and its cautions, stand in sections of their own. */
export function recipeMarkdown({ steps, tooSmall }: Recipe): string {
  const numbered = steps.map(({ text }, n) => `${n + 1}. ${escapeMarkdown(text)}`).join('\n');
  const remedies = (tooSmall?.remedies ?? []).map(({ text }) => escapeMarkdown(text));
  return markdownBlocks([
    numbered,
    tooSmall && escapeMarkdown(tooSmall.message),
    remedies.length > 0 ? markdownList(remedies) : undefined,
  ]);
}

/** Undefined where nothing is taken for granted. */
export function assumptionLine(assumptions: readonly Assumption[]): string | undefined {
  const texts = [...new Map(assumptions.map(({ id, text }) => [id, text])).values()];
  return texts.length === 0 ? undefined : escapeMarkdown(`Assumed: ${texts.join(' ')}`);
}
