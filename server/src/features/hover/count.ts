/** A count: the day number, and the totals with it. */
import { countsOf, dayNumber, type Batch, type CountEvent, type Entry } from '../../journal/life.ts';
import { isUndefined } from '../../measures/measured.ts';
import { isoOf, weekdayOf } from '../../model/day.ts';
import type { Countable } from '../../model/record.ts';
import { lifeOf } from '../events.ts';
import { escapeMarkdown } from '../markdown.ts';
import { totalsText } from '../../words/counted.ts';
import { germinatedAt, originText } from '../../words/germination.ts';
import { intervalText, shareText } from '../../words/shares.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

interface CountOfBatch {
  readonly batch: Batch;
  readonly event: CountEvent;
  readonly what: Countable;
}

const heading: Section<CountOfBatch> = ({ batch, event: { entry: { moment } } }) => {
  const number = dayNumber(batch, moment);
  const { origin } = batch;
  const day = number === undefined || !origin ? ' (no day 0: not yet sown, soaked or in a stage)' : ` · day ${number} from ${originText(origin)}`;
  return `**${escapeMarkdown(batch.path)}** · ${weekdayOf(moment.day)} ${isoOf(moment.day)}${day}`;
};

const germinated: Section<CountOfBatch> = ({ batch, event }) => {
  const share = germinatedAt(batch, event);
  if (isUndefined(share)) return `Germinated so far ${event.after.germinated}; percent – (${share.undefined})`;
  const { x, n, of } = share;
  return `**Germinated so far ${escapeMarkdown(shareText(x, n))}** (${escapeMarkdown(intervalText(x, n))}; ${of})`;
};

/** Nobody saw the day itself: what is new came up between two counts. */
const between: Section<CountOfBatch> = ({ batch, event, what }) => {
  const news = event.after[what] - event.before[what];
  if (news <= 0) return undefined;
  const counts = countsOf(batch);
  const last = counts[counts.indexOf(event) - 1];
  const since = last ? `the count on ${isoOf(last.entry.moment.day)}` : batch.origin && originText(batch.origin);
  return since && `${news} new ${what} since ${since}.`;
};

const others: Section<CountOfBatch> = ({ event }) => {
  const totals = totalsText(event.after);
  return totals === undefined ? undefined : `So far ${totals}`;
};

/** Add to these what else there is to say of a count. */
const countSections: readonly Section<CountOfBatch>[] = [heading, germinated, between, others];

export function hoverCount(entry: Entry, what: Countable, context: HoverContext): string | undefined {
  const lived = lifeOf(context.journal, entry);
  return lived?.event?.type === 'count' ? sectionsOf(countSections, { batch: lived.batch, event: lived.event, what }, context) : undefined;
}
