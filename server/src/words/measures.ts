/** What the counts of a batch say beyond its percentage, row by row. */
import type { BatchMeasures } from '../measures/batch.ts';
import type { EpicotylDelay } from '../measures/epicotyl.ts';
import type { GerminationTime } from '../measures/germination-time.ts';
import { isUndefined, type Measured, type Undefined } from '../measures/measured.ts';
import type { LookLimits } from '../measures/median.ts';
import type { Proportion } from '../measures/proportion.ts';
import { dayText, daysBetween } from '../measures/verdict-words.ts';
import { intervalText, shareText } from './shares.ts';

export interface MeasureRow {
  readonly name: string;
  /** The number with its unit, or a dash with the reason. */
  readonly value: string;
  /** What it is: a definition, the days of check that it rests on, an interval. */
  readonly note: string;
}

/** The rows that say something of this batch; of seed that did not germinate hardly any. */
export function measureRows(measures: BatchMeasures): MeasureRow[] {
  const { germination, seedlings, span, t50Coolbear, ofSown, medianLimits, meanTime, epicotyl } = measures;
  const share = (name: string, of: string, proportion: Proportion | Undefined): MeasureRow[] => (
    isUndefined(proportion) || proportion.x === 0 ? [] : [shareRow(name, proportion, of)]);
  return [
    ...cutRow('of full seed', germination.full, 'the seed, not counting what the cut test found empty'),
    ...cutRow('of viable seed', germination.viable, 'the full seed, not counting what the cut test found dead'),
    ...(isUndefined(span) ? [] : [timeRow('first seed', { after: span.after, by: span.first }, 'the first germinated seed')]),
    timeRow('T50', t50Coolbear, 'half of the germinated seed, (G + 1) / 2 (Coolbear)'),
    ...(isUndefined(t50Coolbear) ? [] : [
      timeRow('half of the seed', ofSown.t50, `half of the seed sown less lost${medianText(medianLimits)}`),
      meanRow(meanTime.mean, meanTime.earliest),
    ]),
    ...(['emerged', 'leaf', 'leggy', 'abnormal', 'died'] as const)
      .flatMap(what => share(what, 'of the germinated seed', seedlings[what])),
    ...(isUndefined(epicotyl) ? [] : [epicotylRow(epicotyl)]),
  ];
}

/** Whoever made no cut test needs no dash. */
function cutRow(name: string, proportion: Proportion | Undefined, of: string): MeasureRow[] {
  if (!isUndefined(proportion)) return [shareRow(name, proportion, of)];
  return proportion.undefined.startsWith('the cut test') ? [dash(name, proportion)] : [];
}

function shareRow(name: string, { x, n }: Proportion, of: string): MeasureRow {
  return { name, value: shareText(x, n), note: `${of}; ${intervalText(x, n)}` };
}

function timeRow(name: string, time: Pick<GerminationTime, 'after' | 'by'> | Undefined, what: string): MeasureRow {
  if (isUndefined(time)) return dash(name, time);
  const { after, by } = time;
  return { name, value: dayText({ after: isUndefined(after) ? undefined : after.value, by }), note: what };
}

/** Example: '; for seed like this day 14 to 42 (95 % interval, Kaplan-Meier)' */
function medianText(limits: LookLimits | Undefined): string {
  if (isUndefined(limits)) return '';
  const { after, by } = limits;
  const days = by !== undefined ? dayText({ after, by }) : after === undefined ? undefined : `after day ${after}`;
  return days === undefined ? '' : `; for seed like this ${days} (95 % interval, Kaplan-Meier)`;
}

/** The mean day of the checks that found the seed is the latest that the true mean can be. */
function meanRow(mean: Measured, earliest: Measured): MeasureRow {
  if (isUndefined(mean)) return dash('mean time', mean);
  const low = isUndefined(earliest) ? undefined : earliest.value;
  const note = 'the seed found at a check germinated after the check before';
  return {
    name: 'mean time', value: withUnit(daysBetween(low, mean.value)),
    note: isUndefined(earliest) ? `${note}; ${earliest.undefined}` : note,
  };
}

function epicotylRow({ leafed, waiting, mean, shortest, longest }: EpicotylDelay): MeasureRow {
  const days = isUndefined(shortest) || isUndefined(longest)
    ? `about ${Math.round(mean)}` : daysBetween(shortest.value, longest.value);
  return { name: 'root to leaf', value: withUnit(days), note: `of ${leafed} with a first leaf, ${waiting} still without` };
}

/** Example: '4 to 9 days' */
function withUnit(days: string): string {
  return `${days} ${/(^| )1$/.test(days) ? 'day' : 'days'}`;
}

function dash(name: string, { undefined: reason }: Undefined): MeasureRow {
  return { name, value: '–', note: reason };
}
