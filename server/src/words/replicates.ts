/** Replicates of one lot and one treatment in plain words. */
import { isUndefined, undefinedBecause } from '../measures/measured.ts';
import type { Course } from '../measures/course.ts';
import { commonAge, lastLook, until } from '../measures/looks.ts';
import { wilson } from '../measures/proportion.ts';
import { poolOf, type Pooled } from '../measures/replicates.ts';
import { ageTogether } from '../measures/shared-looks.ts';
import { probability, wholePercent } from '../measures/verdict-words.ts';
import { oddIn } from '../trials/odd.ts';
import { coursesOf, type Group } from '../trials/groups.ts';
import { shareText } from './shares.ts';

/** An overdispersion up to this widens an interval by nothing that shows. */
const JUST_ONE = 1.01;

/**
 * The replicates of a group taken together, up to the age at which all of them were looked at; of a single batch that
 * batch. Where there is none, up to the age that all of them reached, without a word on how far they differ.
 */
export function pooledOf(group: Group): Pooled {
  const courses = coursesOf(group);
  const pooled = poolOf(courses.map(course => until(course, ageOf(courses))));
  if (ageTogether(courses) !== undefined) return pooled;
  const { x, n } = pooled;
  const apart = undefinedBecause('they were not looked at on the same day');
  return {
    x, n, heterogeneity: apart, range: apart, overdispersion: 1, effective: { x, n }, interval: wilson(x, n),
  };
}

function ageOf(courses: readonly Course[]): number {
  return ageTogether(courses) ?? commonAge(courses);
}

/**
 * What a group of replicates comes to, and whether they lie as close together as chance allows; undefined for a single
 * batch.
 *
 * Example: '82 of 100 = 82 %, 95 % interval 73 to 88 %; heterogeneity chi-square 1.36, 3 df, p 0.72; range 12 points,
 * tolerated 32 points (computed, not of a rule book)'
 */
export function replicatesText(group: Group): string | undefined {
  if (group.batches.length < 2) return undefined;
  const { x, n, interval, heterogeneity, overdispersion, range } = pooledOf(group);
  const limits = `95 % interval ${whole(interval.low)} to ${whole(interval.high)} %${overdispersion > JUST_ONE ? ', widened' : ''}`;
  const alike = isUndefined(heterogeneity) && isUndefined(range)
    ? `how far they differ is unknown (${heterogeneity.undefined})` : isUndefined(heterogeneity) ? `heterogeneity – (${heterogeneity.undefined})`
    : `heterogeneity chi-square ${heterogeneity.chiSquare.toFixed(2)}, ${heterogeneity.df} df, p ${probability(heterogeneity.p)}`;
  const spread = isUndefined(range)
    ? isUndefined(heterogeneity) ? undefined : `range – (${range.undefined})`
    : `range ${points(range.range)}, tolerated ${points(range.tolerated)} `
      + `(${range.basis === 'published' ? '7 CFR 201.55' : 'computed, not from a rule book'})${range.passed ? '' : ': too wide'}`;
  const courses = coursesOf(group);
  const age = ageOf(courses);
  const cut = courses.some(course => lastLook(course) > age) ? `by day ${age}, ` : '';
  return [`${cut}${shareText(x, n)}, ${limits}`, alike, spread, oddText(group)].filter(text => text !== undefined).join('; ');
}

/**
 * The dish that does not go with the others, which is more than chance explains.
 *
 * Example: 'the odd one out is L/D: 8 of 25, the others 54 of 75'
 */
function oddText(group: Group): string | undefined {
  const odd = oddIn(group);
  if (!odd) return undefined;
  const { batch, dish, others } = odd;
  return `the odd one out is ${batch.path}: ${dish.x} of ${dish.n}, the others ${others.x} of ${others.n}`;
}

function whole(share: number): string {
  return String(wholePercent(share));
}

function points(value: number): string {
  return `${Math.round(10 * value) / 10} points`;
}
