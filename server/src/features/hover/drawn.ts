/** The small picture at the head of a hover, for who can show it; its numbers stand below it in words. */
import { stockNow } from '../../calendar/left.ts';
import type { Container } from '../../calendar/places.ts';
import type { Batch, Lot, Soak } from '../../journal/life.ts';
import type { Solution } from '../../journal/solutions.ts';
import type { Day } from '../../model/day.ts';
import type { JournalRecord } from '../../model/record.ts';
import { addressOf } from '../../pictures/address.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { themes } from '../../pictures/theme.ts';
import { trialOf } from '../../trials/lot-trial.ts';
import { runningSoakPicture, stockPicture } from '../drawing/bench.ts';
import { batchPicture, lotPicture } from '../drawing/pictures.ts';
import { placesPicture } from '../drawing/places.ts';
import { regimePicture, stagesPicture } from '../drawing/season.ts';
import { escapeMarkdown } from '../markdown.ts';
import type { HoverContext, Section } from './section.ts';

/** Pixels: what VS Code shows of a hover without a scroll bar. */
const WIDTH = 400;

export interface SoakOfBatch {
  readonly soak: Soak;
  readonly batch: Batch;
  readonly lot: Lot;
}

interface RegimeFrom {
  readonly id: string;
  readonly record: JournalRecord;
  /** Undefined: today. */
  readonly start: Day | undefined;
}

export const lotDrawn: Section<Lot> = (lot, context) =>
  drawn(context, frame => lotPicture(trialOf(lot, context.now.day), frame));

export const batchDrawn: Section<{ readonly batch: Batch; readonly lot: Lot }> = ({ batch, lot }, context) =>
  drawn(context, frame => batchPicture(batch, trialOf(lot, context.now.day), frame));

/** The stages of a batch that is, or was, in the cold or in the warm. */
export const stagesDrawn: Section<{ readonly batch: Batch }> = ({ batch }, context) =>
  drawn(context, frame => stagesPicture(batch, context.now, frame), 'hover-stages');

/** How much of a soak is gone, while the seed is in it. */
export const soakDrawn: Section<SoakOfBatch> = ({ soak, batch, lot }, context) =>
  drawn(context, frame => runningSoakPicture(soak, { batch, lot }, context.journal, context.now, frame), 'hover-soak');

/** What is left in a bottle or a packet. */
export const stockDrawn: Section<Solution> = (solution, context) => {
  const stock = stockNow(solution, context.journal, context.now);
  return stock && drawn(context, frame => stockPicture(stock, context.journal, context.now, frame), 'hover-stock');
};

/** The stages of a regime as if it began on a day. */
export const regimeDrawn: Section<RegimeFrom> = ({ id, record, start }, context) =>
  drawn(context, frame => regimePicture(id, record, start ?? context.now.day, context.now, frame), 'hover-regime');

/** What lies in a container now. */
export const placeDrawn: Section<Container> = ({ key }, context) =>
  drawn(context, frame => placesPicture(context.journal, context.now, frame, key), 'hover-place');

function drawn({ theme }: HoverContext, draw: (frame: Frame) => Picture | undefined, id = 'hover'): string | undefined {
  const picture = theme && draw({ theme: themes[theme], width: WIDTH, small: true, id });
  if (!picture) return undefined;
  const alt = escapeMarkdown(id === 'hover' ? `Germination of ${picture.title} over time` : picture.title);
  return `![${alt}](${addressOf(picture)})`;
}
