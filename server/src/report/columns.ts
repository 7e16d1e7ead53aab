/** The columns of a lot's table, the same in text and in Markdown. */
import { partlyWentText, pottedText } from '../words/leaving.ts';
import { rangeOf } from '../journal/estimates.ts';
import type { Moment } from '../journal/moment.ts';
import type { GerminationTime } from '../measures/germination-time.ts';
import { isUndefined, type Interval } from '../measures/measured.ts';
import { dayText, daysBetween } from '../measures/verdict-words.ts';
import type { SeedRange } from '../model/estimate.ts';
import { cutClasses, type Countable } from '../model/record.ts';
import type { BatchReport } from './batch-report.ts';
import { stateText } from '../words/state.ts';

export interface Column {
  readonly head: string;
  /** `text` comes from the journal in part, and may be long; `number` is aligned to the right. */
  readonly kind: 'text' | 'number';
  readonly cells: readonly string[];
}

/** What is not known, or has no value; the reason stands below the table. */
const DASH = '–';

/** Columns without anything to show are left out; a count of 0 germinated is something. */
export function columnsOf(batches: readonly BatchReport[], now: Moment): Column[] {
  const text = (head: string, cell: (batch: BatchReport) => string): Column =>
    ({ head, kind: 'text', cells: batches.map(cell) });
  const number = (head: string, cell: (batch: BatchReport) => number | string | undefined): Column =>
    ({ head, kind: 'number', cells: batches.map(batch => String(cell(batch) ?? DASH)) });
  const where = (shown: boolean, ...columns: Column[]): Column[] => (shown ? columns : []);
  const counted = (head: string, what: Countable): Column[] =>
    where(batches.some(({ totals }) => totals && totals[what] > 0), number(head, ({ totals }) => totals?.[what]));
  return [
    text('Batch', ({ batch }) => batch.path),
    text('Treatment', ({ treatment, state }) => (state.kind === 'not begun' ? 'none yet' : treatment)),
    ...where(batches.some(isPartlySown), number('Seeds', ({ batch }) => seedsText(rangeOf(batch, 'kept')))),
    ...where(batches.some(({ batch }) => batch.sowing),
      number('Sown', ({ batch }) => (batch.sowing ? seedsText(rangeOf(batch, 'sown')) : undefined))),
    ...counted('Lost', 'lost'),
    ...where(batches.some(({ totals }) => totals),
      number('Germinated', ({ totals }) => totals?.germinated),
      number('%', ({ germination, germinationRange }) => (
        germinationRange ? between(germinationRange.share)
          : isUndefined(germination) ? DASH : percent(germination.value))),
      number('95 % interval', ({ germination, germinationRange }) => {
        if (germinationRange) return between(germinationRange.wilson);
        return isUndefined(germination) ? DASH : between(germination.wilson);
      }),
      number('First', ({ measures, days }) => firstOf(measures, days)),
      number('Last', ({ days }) => (isUndefined(days) ? DASH : days.last))),
    ...where(batches.some(({ measures }) => t50Of(measures) !== DASH),
      number('T50', ({ measures }) => t50Of(measures)),
      number('Mean time', ({ measures }) => meanTimeOf(measures))),
    ...where(batches.some(({ measures }) => shareOf(measures, 'full') !== DASH),
      number('% of full', ({ measures }) => shareOf(measures, 'full')),
      number('% of viable', ({ measures }) => shareOf(measures, 'viable'))),
    ...counted('Emerged', 'emerged'),
    ...counted('Leaf', 'leaf'),
    ...counted('Rotted', 'rotted'),
    ...counted('Died', 'died'),
    ...counted('Leggy', 'leggy'),
    ...counted('Abnormal', 'abnormal'),
    ...counted('Stuck', 'stuck'),
    ...counted('Freed', 'freed'),
    ...where(batches.some(({ cut }) => cut), text('Cut test', ({ cut }) => (cut ? cutText(cut) : DASH))),
    text('State', ({ batch: { totals: { germinated } }, state, potted, leavings }) => (
      joined('; ', stateText(state, now), joined(', ', pottedText(potted, germinated), partlyWentText(leavings, germinated))))),
  ];
}

function joined(between: string, ...parts: readonly string[]): string {
  return parts.filter(part => part !== '').join(between);
}

function isPartlySown({ batch }: BatchReport): boolean {
  return seedsText(rangeOf(batch, 'kept')) !== (batch.sowing && seedsText(rangeOf(batch, 'sown')));
}

/** Example: '24', of seeds that were estimated '22 to 26' */
function seedsText(seeds: SeedRange | undefined): string | undefined {
  return seeds && range(seeds.least, seeds.most);
}

function between({ low, high }: Interval): string {
  const [least, most] = [percent(low), percent(high)];
  return least === most ? least : `${least} to ${most}`;
}

type Measures = BatchReport['measures'];

/** Of seed without a number nothing is measured, but the day of the look that found the first is known. */
function firstOf(measures: Measures, days: BatchReport['days']): string {
  if (!isUndefined(measures) && !isUndefined(measures.span)) return limitsOf({ after: measures.span.after,
    by: measures.span.first });
  return isUndefined(days) ? DASH : dayText({ after: undefined, by: days.first });
}

function t50Of(measures: Measures): string {
  return isUndefined(measures) || isUndefined(measures.t50Coolbear) ? DASH : limitsOf(measures.t50Coolbear);
}

function limitsOf({ after, by }: Pick<GerminationTime, 'after' | 'by'>): string {
  return dayText({ after: isUndefined(after) ? undefined : after.value, by });
}

/** Between these two the mean lies: counts tell only between which of them seed germinated. */
function meanTimeOf(measures: Measures): string {
  if (isUndefined(measures) || isUndefined(measures.meanTime.mean)) return DASH;
  const { mean, earliest } = measures.meanTime;
  return daysBetween(isUndefined(earliest) ? undefined : earliest.value, mean.value);
}

function shareOf(measures: Measures, of: 'full' | 'viable'): string {
  const share = isUndefined(measures) ? measures : measures.germination[of];
  return isUndefined(share) ? DASH : percent(share.value);
}

/** Example: '8 fresh, 1 empty' */
function cutText(cut: NonNullable<BatchReport['cut']>): string {
  return cutClasses.filter(what => cut[what] > 0).map(what => `${cut[what]} ${what}`).join(', ') || 'nothing left';
}

/**
 * A percentage for a column of them, always with one decimal place; what is not quite nothing or everything does not
 * round to it.
 *
 * Example: percent(11 / 12) is '91.7'
 */
function percent(share: number): string {
  if (share > 0 && share < 0.0005) return '<0.1';
  if (share < 1 && share >= 0.9995) return '>99.9';
  return (share * 100).toFixed(1);
}

function range(first: number, last: number): string {
  return first === last ? String(first) : `${first} to ${last}`;
}
