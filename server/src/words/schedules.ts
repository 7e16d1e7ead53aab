/** Plans from a date in plain words. */
import { stageName } from '../calendar/ask.ts';
import type { GuideSoak, LeafDays, When } from '../calendar/when.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import type { Schedule } from '../calendar/backwards.ts';
import { isoOf, type Day } from '../model/day.ts';
import { printQuantity } from '../model/quantity.ts';
import { daysText } from './days.ts';

export interface Step {
  readonly day: Day;
  readonly what: string;
}

/** What is to be done when; the last one is what it was done for. */
export function stepsOf(
  { soak, sow, stages, end, ready }: Schedule, { soak: span, leaf }: Pick<When, 'soak' | 'leaf'>,
): Step[] {
  const [first, ...others] = stages;
  return [
    ...(soak === undefined || !span ? [] : [{ day: soak, what: `soak ${printQuantity(span)}` }]),
    { day: sow, what: first ? `sow; ${stageName(first)}` : 'sow' },
    ...others.map(stage => ({ day: stage.start, what: stageName(stage) })),
    { day: end, what: 'the last stage ends' },
    ...(leaf && !isUndefined(leaf) ? [{ day: ready, what: 'first leaves' }] : []),
  ];
}

/** Example: 'in regime woodland, to have first leaves by 2027-05-01' */
export function aimText({ by, day }: When['fixed']): string {
  const on = isoOf(day);
  switch (by) {
    case 'leaf': return `for first leaves by ${on}`;
    case 'end': return `to end by ${on}`;
    case 'sowing': return `sown on ${on}`;
    case 'start': return `started on ${on}`;
  }
}

/** What the dates are based on, and what is not in them. */
export function basisText({ fixed, leaf }: Pick<When, 'fixed' | 'leaf'>): string[] {
  return [
    ...(leaf ? [leafText(leaf)] : ['The days from germination to a first leaf are not included.']),
    ...(fixed.by === 'leaf'
      ? ['The days to a first leaf count from the end of the last stage. That is on the safe side: much seed germinates before the stage ends.'] : []),
  ];
}

/**
 * Which guides soak the plant, and how long.
 *
 * Example: 'soaked for 24 h (HortScience 44(3):870)'
 */
export function guideSoakText({ soak, guides }: GuideSoak): string {
  const sources = [...new Set(guides.map(({ source, plant }) => source ?? `the guide for ${plant}`))];
  return `soaked for ${printQuantity(soak)} (${sources.join('; ')})`;
}

function leafText(leaf: LeafDays | Undefined): string {
  if (isUndefined(leaf)) return `The days from germination to a first leaf are not included: ${leaf.undefined}.`;
  const { days, own } = leaf;
  if (!own) return `From germination to a first leaf: ${daysText(days)}, as you gave it.`;
  const { least, most, batches, of } = own;
  const range = least === most ? '' : `, ${least} to ${most}`;
  return `From germination to a first leaf: ${daysText(days)}, by ${batches === 1 ? '1 batch' : `the median of ${batches} batches`} of ${of} in these records${range}.`;
}
