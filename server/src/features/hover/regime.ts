/** A regime: its stages, with days from its start, or with dates on a record that sows under it. */
import { stageName } from '../../calendar/ask.ts';
import { stageOf } from '../../calendar/regime-match.ts';
import { regimePlans, type RegimePlan } from '../../calendar/regimes.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Entry } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { dayAfter, minutesOf } from '../../model/quantity.ts';
import { factsOf, type StageFact } from '../../model/record.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';
import { lifeOf } from '../events.ts';
import { planMarkdown } from './course.ts';
import { regimeDrawn, stagesDrawn } from './drawn.ts';
import type { HoverContext } from './section.ts';

export function hoverRegime(id: string, entry: Entry, context: HoverContext): string | undefined {
  const { journal, now } = context;
  const { record, moment } = entry;
  const sown = record.keyword === 'sow' ? planOf(entry, journal, now) : undefined;
  if (sown) {
    const { batch, plan } = sown;
    const heading = `**${escapeMarkdown(id)}** · regime of ${escapeMarkdown(batch.path)} from the sowing on ${isoOf(plan.sowing.moment.day)}`;
    return markdownBlocks([heading, stagesDrawn({ batch }, context), planMarkdown(batch, plan, now.day)]);
  }
  const definition = journal.definitionsOf(id).find(entry => entry.record.keyword === 'regime');
  if (!definition) return undefined;
  const stages = factsOf(definition.record, 'stage');
  const start = record.keyword === 'sow' ? moment?.day : undefined;
  const heading = `**${escapeMarkdown(id)}** · regime${start === undefined ? '' : `, as planned from the sowing on ${isoOf(start)}`}`;
  return markdownBlocks([
    heading, regimeDrawn({ id, record: definition.record, start }, context),
    markdownList(stageLines(stages, start).map(escapeMarkdown)),
  ]);
}

/** The plan that a record laid out, with the batch that it sowed. */
function planOf(entry: Entry, journal: Journal, now: Moment): { batch: Batch; plan: RegimePlan } | undefined {
  const batch = lifeOf(journal, entry)?.batch;
  const plan = batch && regimePlans(batch, now).find(({ sowing }) => sowing.line === entry.line);
  return batch && plan && { batch, plan };
}

/** Each stage with its days; without a start counted from 0, as far as they do not depend on the calendar. */
function stageLines(stages: readonly StageFact[], start: Day | undefined): string[] {
  let from: Day | undefined = start ?? 0;
  return stages.map(stage => {
    const { duration } = stage;
    const text = stageName(stageOf(stage));
    const isFixed: boolean = duration !== undefined && (start !== undefined || minutesOf(duration.value) !== undefined);
    const to: Day | undefined = from !== undefined && duration && isFixed ? dayAfter(from, duration.value) : undefined;
    const days = from === undefined ? '' : to === undefined ? `: from ${named(from)}` : `: ${named(from)} to ${named(to)}`;
    from = to;
    return `${text}${days}`;
  });

  function named(day: Day): string {
    return start === undefined ? `day ${day}` : isoOf(day);
  }
}
