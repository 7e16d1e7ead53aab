/** A `judge` record: the day that it names, and what is said of each comparison that it binds. */
import { judgeDayOf, judgeRecordsOf } from '../../calendar/judge-days.ts';
import type { Batch, BatchEvent, Lot } from '../../journal/life.ts';
import { isoOf, weekdayOf } from '../../model/day.ts';
import { trialOf } from '../../trials/lot-trial.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';
import { agoText } from '../../words/days.ts';
import type { HoverContext } from './section.ts';
import { contestLine } from './trial.ts';

export function hoverJudge(event: BatchEvent, lot: Lot, batch: Batch, { now }: HoverContext): string | undefined {
  const record = judgeRecordsOf([batch]).find(({ entry }) => entry === event.entry);
  if (!record) return undefined;
  const bound = trialOf(lot, now.day).contests.filter(({ judging }) => judging?.record.entry === event.entry);
  const days = [...lot.batches.values()].flatMap(each => (
    isWithin(each, batch) ? judgeDayOf(record, each.origin?.moment.day) ?? [] : []));
  const [day] = days;
  const words = day === undefined
    ? 'The day counts from day 0, which is still unknown.'
    : `To be judged on ${weekdayOf(day)} ${isoOf(day)}, ${agoText(day, now.day)}, or by the first count of the week after it.`;
  return markdownBlocks([escapeMarkdown(words), bound.length > 0 ? markdownList(bound.map(contestLine)) : undefined]);
}

function isWithin(batch: Batch, family: Batch): boolean {
  for (let each: Batch | undefined = batch; each; each = each.parent) if (each === family) return true;
  return false;
}
