/** A cold or a warm stage: how far it has gone, and when it is to end. */
import type { Batch, Stage } from '../../journal/life.ts';
import { isoOf } from '../../model/day.ts';
import { escapeMarkdown } from '../markdown.ts';
import { agoText } from '../../words/days.ts';
import { plannedEnd, stageProgressText } from '../../words/stages.ts';
import type { HoverContext } from './section.ts';

export function hoverStage(stage: Stage, { path }: Batch, { now }: HoverContext): string {
  const { start, end } = stage;
  // A record that is dated ahead plans the end.
  const last = end?.day ?? plannedEnd(stage);
  const ends = last === undefined ? ''
    : end && end.day <= now.day ? `, ended ${isoOf(end.day)}` : `, to end ${isoOf(last)} (${agoText(last, now.day)})`;
  const begins = `${start.day > now.day ? 'from' : 'since'} ${isoOf(start.day)}`;
  return `**${escapeMarkdown(path)}** · ${escapeMarkdown(`${stageProgressText(stage, now.day)}, ${begins}${ends}`)}`;
}
