/** The small picture at the head of a hover, for who can show it; its numbers stand below it in words. */
import type { Batch, Lot } from '../../journal/life.ts';
import { addressOf } from '../../pictures/address.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { themes } from '../../pictures/theme.ts';
import { batchPicture, lotPicture } from '../drawing/pictures.ts';
import { stagesPicture } from '../drawing/season.ts';
import { escapeMarkdown } from '../markdown.ts';
import type { HoverContext, Section } from './section.ts';

/** Pixels: what VS Code shows of a hover without a scroll bar. */
const WIDTH = 400;

export const lotDrawn: Section<Lot> = (lot, context) => drawn(context, frame => lotPicture(lot, frame));

export const batchDrawn: Section<{ readonly batch: Batch; readonly lot: Lot }> = ({ batch, lot }, context) =>
  drawn(context, frame => batchPicture(batch, lot, frame));

/** The stages of a batch that is, or was, in the cold or in the warm. */
export const stagesDrawn: Section<{ readonly batch: Batch }> = ({ batch }, context) =>
  drawn(context, frame => stagesPicture(batch, context.now, frame), 'hover-stages');

function drawn({ theme }: HoverContext, draw: (frame: Frame) => Picture | undefined, id = 'hover'): string | undefined {
  const picture = theme && draw({ theme: themes[theme], width: WIDTH, small: true, id });
  if (!picture) return undefined;
  const alt = escapeMarkdown(id === 'hover' ? `Germination of ${picture.title} over time` : picture.title);
  return `![${alt}](${addressOf(picture)})`;
}
