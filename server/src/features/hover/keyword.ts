/** A keyword: what its record did, then how such a record is written. */
import type { Entry } from '../../journal/life.ts';
import { keywords } from '../../model/keywords.ts';
import { escapeMarkdown } from '../markdown.ts';
import { hoverCount } from './count.ts';
import { hoverEvent } from './fact.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

const done: Section<Entry> = (entry, context) =>
  entry.record.keyword === 'count' ? hoverCount(entry, 'germinated', context) : hoverEvent(entry, context);

/** In full only where it stands alone: what was done matters more. */
const help: Section<Entry> = (entry, context) => {
  const { keyword } = entry.record;
  const { says, facts, example } = keywords[keyword];
  if (done(entry, context) !== undefined) return `**${keyword}** – ${escapeMarkdown(says)}`;
  const shapes = facts.map(({ shape, required }) => `\`${shape}\`${required ? ' (needed)' : ''}`);
  const takes = shapes.length === 0 ? '' : `\n\nFacts, in any order: ${shapes.join(' · ')}`;
  return `**${keyword}** – ${escapeMarkdown(says)}${takes}\n\n\`\`\`plumule\n${example}\n\`\`\``;
};

/** Add to these what else there is to say of a record over its keyword. */
const keywordSections: readonly Section<Entry>[] = [done, help];

export function hoverKeyword(entry: Entry, context: HoverContext): string | undefined {
  return sectionsOf(keywordSections, entry, context);
}
