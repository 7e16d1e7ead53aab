/** The regime that a batch is in, done and to come, and the cold that it has had. */
import { chilling } from '../../calendar/chilling.ts';
import { regimePlan, type RegimePlan } from '../../calendar/regimes.ts';
import type { Batch } from '../../journal/life.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';
import { chillText } from '../words/chilling.ts';
import { courseText, laidText } from '../words/regimes.ts';
import type { Section } from './section.ts';

interface OfBatch {
  readonly batch: Batch;
}

export const regimeSection: Section<OfBatch> = ({ batch }, { journal, now }) => {
  const plan = regimePlan(batch, journal, now);
  if (!plan) return undefined;
  const { regime, sowing } = plan;
  return markdownBlocks([`**Regime ${escapeMarkdown(regime)}**, sown ${isoOf(sowing.moment.day)}:`, planMarkdown(plan, now.day)]);
};

/** The stages of a regime as they were laid out and as they have turned out. */
export function planMarkdown(plan: RegimePlan, today: Day): string {
  const course = courseText(plan, today);
  return markdownBlocks([
    markdownList(plan.stages.map(stage => escapeMarkdown(laidText(stage, today)))), course && escapeMarkdown(course),
  ]);
}

export const chillSection: Section<OfBatch> = ({ batch }, { journal, now }) => {
  const cold = chilling(batch, journal, now);
  return cold && escapeMarkdown(chillText(cold));
};
