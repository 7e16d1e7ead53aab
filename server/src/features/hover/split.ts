/** What the numbers of seed in a `split` can show, before the experiment. */
import type { Entry } from '../../journal/life.ts';
import { subjectIdOf } from '../../journal/mentions.ts';
import { splitPlan } from '../../trials/split-plan.ts';
import { escapeMarkdown, markdownBlocks, markdownTable } from '../markdown.ts';
import { PLAN_HEAD, planRow, planSides, planTableBasis } from '../../words/plans.ts';
import type { HoverContext } from './section.ts';

/** Undefined for any other record, and for a split that makes no trial. */
export function hoverSplit({ record }: Entry, { journal }: HoverContext): string | undefined {
  const lot = record.keyword === 'split' ? journal.lot(subjectIdOf(record) ?? '') : undefined;
  const planned = lot && splitPlan(record, lot);
  if (!planned) return undefined;
  const { isSupposed, plans } = planned;
  const [first] = plans;
  const supposed = isSupposed ? ' Nothing was done to the parts yet, so which ones will be treated is assumed.' : '';
  const sides = `${planSides(planned)}.${supposed}`;
  return markdownBlocks([
    '**What this split can show**',
    first.isMany
      ? escapeMarkdown(first.sentence)
      : markdownTable(PLAN_HEAD.map(escapeMarkdown), plans.map(plan => planRow(plan).map(escapeMarkdown))),
    escapeMarkdown(`${sides} ${planTableBasis(first).join(' ')}`),
  ]);
}
