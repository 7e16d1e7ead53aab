/** A batch: its life in a line, what germinated and when, what else was counted, where it lies. */
import { whereNow, whereText } from '../../calendar/places.ts';
import { staysOf } from '../../calendar/stays.ts';
import { rangeOf } from '../../journal/estimates.ts';
import { countsOf, dayNumber, type Batch, type BatchEvent, type Lot } from '../../journal/life.ts';
import { isBefore, type Moment } from '../../journal/moment.ts';
import { isUndefined } from '../../measures/measured.ts';
import { isoOf } from '../../model/day.ts';
import { escapeMarkdown } from '../markdown.ts';
import { rangedSeedsText } from '../../words/seeds.ts';
import { agoText } from '../../words/days.ts';
import { germinatedOf, germinationDays, originText } from '../../words/germination.ts';
import { lifeLine } from '../../words/life-line.ts';
import { countedText } from '../../words/counted.ts';
import { intervalText, shareText } from '../../words/shares.ts';
import { chillSection, regimeSection } from './course.ts';
import { batchDrawn, stagesDrawn } from './drawn.ts';
import { measuresSection, verdictSection } from './measures.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

interface BatchOfLot {
  readonly batch: Batch;
  readonly lot: Lot;
}

const heading: Section<BatchOfLot> = ({ batch, batch: { path }, lot }, { now }) => {
  const place = whereText(whereNow(staysOf(lot), path, now));
  const seeds = rangeOf(batch, 'seeds');
  const facts = [lot.plant, seeds && rangedSeedsText(seeds), place === undefined ? undefined : `at ${place}`];
  return [`**${escapeMarkdown(path)}**`, ...facts.filter(fact => fact).map(fact => escapeMarkdown(fact!))].join(' · ');
};

const life: Section<BatchOfLot> = ({ batch }, { journal, now }) => escapeMarkdown(lifeLine(batch, journal, now) ?? 'nothing done yet');

const germinated: Section<BatchOfLot> = ({ batch }) => {
  const share = germinatedOf(batch);
  if (isUndefined(share)) return countsOf(batch).length === 0 ? undefined : `Germinated: – (${share.undefined})`;
  const { x, n, of } = share;
  return `**Germinated ${escapeMarkdown(shareText(x, n))}** (${escapeMarkdown(intervalText(x, n))}; ${of})`;
};

const days: Section<BatchOfLot> = ({ batch }, { now }) => {
  const { origin } = batch;
  const last = countsOf(batch).at(-1);
  if (!origin) return last && 'Days: – (no day 0: not yet sown, soaked or in a stage)';
  const end = closing(batch, now)?.entry.moment;
  const number = dayNumber(batch, end ?? now)!;
  const day = number < 0 ? `Day 0 is ${agoText(origin.moment.day, now.day)}` : `${end ? 'Closed on' : 'Today is'} day ${number}`;
  const seen = germinationDays(batch);
  return [
    `${day}; day 0 is ${originText(origin)}.`,
    isUndefined(seen) ? '' : seen.first === seen.last
      ? ` New germination was seen on day ${seen.first} only.`
      : ` New germination was first seen on day ${seen.first}, last on day ${seen.last}.`,
    last ? ` Last counted ${agoText(last.entry.moment.day, now.day)}.` : number < 0 ? '' : ' Not counted yet.',
  ].join('');
};

const counted: Section<BatchOfLot> = ({ batch }) => countedText(batch);

const parts: Section<BatchOfLot> = ({ batch, batch: { children } }) => {
  if (children.length === 0) return undefined;
  const kept = rangeOf(batch, 'kept');
  const given = children.map(child => {
    const seeds = rangeOf(child, 'seeds');
    return `${child.path} (${seeds ? rangedSeedsText(seeds) : 'number not recorded'})`;
  }).join(', ');
  return escapeMarkdown(`Divided into ${given}${kept ? `; ${rangedSeedsText(kept)} kept` : ''}.`);
};

const closed: Section<BatchOfLot> = ({ batch }, { now }) => {
  const event = closing(batch, now);
  return event && `Closed on ${isoOf(event.entry.moment.day)} by “${event.type}”.`;
};

/** What has closed the batch by now. */
function closing({ closed: event }: Batch, now: Moment): BatchEvent | undefined {
  return event && !isBefore(now, event.entry.moment) ? event : undefined;
}

const unread: Section<BatchOfLot> = ({ batch }) =>
  batch.unread ? 'A record of this batch, or of the seed it was split from, has an error, so these numbers may be incomplete.' : undefined;

/** Add to these what else there is to say of a batch. */
export const batchSections: readonly Section<BatchOfLot>[] = [
  life, germinated, verdictSection, days, counted, stagesDrawn, regimeSection, chillSection, measuresSection,
  parts, closed, unread,
];

export function hoverBatch(lot: Lot | undefined, path: string, context: HoverContext): string | undefined {
  const batch = lot?.batches.get(path);
  return lot && batch && sectionsOf([heading, batchDrawn, ...batchSections], { batch, lot }, context);
}
