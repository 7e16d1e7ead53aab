/** A regime that a batch is in, in plain words: what is done, what goes on, what is to come, and on which days. */
import { stageName } from '../calendar/ask.ts';
import type { LaidStage } from '../calendar/regime-dates.ts';
import type { PlannedStage, RegimePlan } from '../calendar/regimes.ts';
import { isoOf, type Day } from '../model/day.ts';
import { printTemperature } from '../model/quantity.ts';
import { listed } from '../syntax/nearest.ts';
import { agoText } from './days.ts';
import { plannedMark, stageText } from './stages.ts';

/**
 * A stage with its days; where the plan of the sowing had another start, that too. `planned`: nobody wrote it down.
 *
 * Example: 'chill 4 C 14 weeks: since 2026-11-29, 12 of 98 days, to end 2027-03-07'
 */
export function laidText(stage: LaidStage, today: Day, planned?: PlannedStage): string {
  const isLate = stage.state === 'to come' && planned !== undefined && planned.start <= today;
  if (isLate) return `${laidName(stage)}: ${lateText(stage, planned, today)}`;
  const isUnwritten = planned !== undefined && stage.state !== 'to come';
  const mark = isUnwritten ? ` (${plannedMark(planned, today)})` : shiftText(stage);
  return `${laidName(stage)}: ${datesText(stage, today)}${mark}`;
}

/** Its day has come by the plan, and nobody wrote that it began. */
function lateText({ start }: LaidStage, planned: PlannedStage, today: Day): string {
  const until = planned.end === undefined ? `since ${isoOf(planned.start)}` : `${isoOf(planned.start)} to ${isoOf(planned.end)}`;
  const otherwise = start === undefined ? '' : `; if it has not started, ${isoOf(start)} at the earliest`;
  return `no record; in the regime ${until} (${plannedMark(planned, today)})${otherwise}`;
}

/** Example: 'chill 4 C 14 weeks'; of a stage whose temperature was changed on the way 'chill 12/2 C, then 4 C' */
function laidName(stage: LaidStage): string {
  if (stage.records.length < 2) return stageName(stage);
  const texts = stage.records.flatMap(({ temperature }) => (temperature ? [printTemperature(temperature)] : []));
  const changes = texts.filter((text, n) => text !== texts[n - 1]);
  return [stage.stage, changes.join(', then ')].filter(text => text !== '').join(' ');
}

function datesText({ state, start, due, end }: LaidStage, today: Day): string {
  switch (state) {
    case 'skipped': return 'skipped';
    case 'not reached': return 'not reached';
    case 'done': return `done, ${isoOf(start!)} to ${isoOf(end!)}`;
    case 'running': return `since ${isoOf(start!)}, ${runText(start!, due, today)}`;
    case 'to come':
      if (start === undefined) return 'to come; its date is unknown because an earlier stage has no length';
      return `to come, ${isoOf(start)}${due === undefined ? '' : ` to ${isoOf(due)}`}`;
  }
}

function runText(start: Day, due: Day | undefined, today: Day): string {
  if (due === undefined) return `${today - start} days, no length recorded`;
  const days = `${today - start} of ${due - start} days`;
  return due < today ? `${days}, should have ended ${isoOf(due)}` : `${days}, ends ${isoOf(due)}`;
}

function shiftText({ planned, start }: LaidStage): string {
  return planned.start === undefined || start === undefined || planned.start === start ? '' : ` (planned from ${isoOf(planned.start)})`;
}

/**
 * How it ends, and what is not as planned; undefined where there is nothing to say.
 *
 * Example: 'It ends 2027-05-30 at the earliest (in 6 months).'
 */
export function courseText({ end, stages, cutShort, offPlan }: RegimePlan, today: Day): string | undefined {
  const last = stages.at(-1);
  const ends = cutShort ? `Cut short on ${isoOf(cutShort.moment.day)} by “${cutShort.record.keyword}”.`
    : end === undefined || last?.state === 'done' ? undefined
    : `It ends ${isoOf(end)}${end < today ? '' : ' at the earliest'} (${agoText(end, today)}).`;
  const off = offPlan.length === 0 ? undefined
    : `Not in the regime: ${listed(offPlan.map(stage => `${stageText(stage)} from ${isoOf(stage.start.day)}`), 'and')}.`;
  return [ends, off].filter(text => text !== undefined).join(' ') || undefined;
}
