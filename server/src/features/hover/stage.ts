/** A cold or a warm stage: how far it has gone, and when it is to end. */
import type { Batch, Stage } from '../../journal/life.ts';
import { isoOf } from '../../model/day.ts';
import { escapeMarkdown } from '../markdown.ts';
import { agoText } from '../../words/days.ts';
import { plannedEnd, stageProgressText } from '../../words/stages.ts';
import type { HoverContext } from './section.ts';

export function hoverStage(stage: Stage, { path }: Batch, { now }: HoverContext): string {
  const planned = plannedEnd(stage);
  const end = stage.end ? `, ended ${isoOf(stage.end.day)}` : planned === undefined ? '' : `, to end ${isoOf(planned)} (${agoText(planned, now.day)})`;
  return `**${escapeMarkdown(path)}** · ${escapeMarkdown(`${stageProgressText(stage, now.day)}, since ${isoOf(stage.start.day)}${end}`)}`;
}
