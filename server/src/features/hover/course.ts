/** The regime that a batch is in, done and to come, and the cold that it has had. */
import { chilling } from '../../calendar/chilling.ts';
import { endingOf } from '../../calendar/endings.ts';
import { plannedStages, regimePlan, type RegimePlan } from '../../calendar/regimes.ts';
import { standingOf } from '../../calendar/standing.ts';
import type { Batch, DatedEntry, Stage } from '../../journal/life.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';
import { chillText } from '../../words/chilling.ts';
import { courseText, laidText } from '../../words/regimes.ts';
import type { Section } from './section.ts';

interface OfBatch {
  readonly batch: Batch;
}

export const regimeSection: Section<OfBatch> = ({ batch }, { now }) => {
  const plan = regimePlan(batch, now);
  if (!plan) return undefined;
  const { regime, sowing } = plan;
  const heading = `**Regime ${escapeMarkdown(regime)}**, sown ${isoOf(sowing.moment.day)}:`;
  const moved = plan.current && plan.next ? endingOf(standingOf(batch, now), now)?.moved : undefined;
  return markdownBlocks([
    heading, planMarkdown(batch, plan, now.day), moved && escapeMarkdown(movedText(moved, plan.next!.stage)),
  ]);
};

/** A stage is over time, and the batch was moved since it began. */
function movedText({ record, moment }: DatedEntry, next: Stage['stage']): string {
  const place = factOf(record, 'at')?.value.text;
  const to = place === undefined ? '' : ` to ${place}`;
  return `The batch was moved${to} on ${isoOf(moment.day)}. If the ${next} stage started then, write a “${next}” for that day: ` +
    'a “move” does not record a temperature.';
}

/** The stages of a regime as they were laid out and as they have turned out. */
export function planMarkdown({ inherited, events }: Batch, plan: RegimePlan, today: Day): string {
  const course = courseText(plan, today);
  const planned = plannedStages([...inherited, ...events]).filter(({ sowing }) => sowing === plan.sowing);
  const lines = plan.stages.map(stage => (
    laidText(stage, today, planned.find(({ number }) => number === stage.number))));
  return markdownBlocks([markdownList(lines.map(escapeMarkdown)), course && escapeMarkdown(course)]);
}

export const chillSection: Section<OfBatch> = ({ batch }, { now }) => {
  const cold = chilling(batch, now);
  return cold && escapeMarkdown(chillText(cold));
};
