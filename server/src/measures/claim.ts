import { agesFor, type Ages } from './ages.ts';
import { finalTotal, type Course } from './course.ts';
import type { Share } from './difference.ts';
import { inTheEnd, type InTheEnd } from './in-the-end.ts';
import { jointP } from './joint.ts';
import { atMost, lastLook, lookAfter, lookBefore } from './looks.ts';
import { undefinedBecause, isUndefined, type Undefined } from './measured.ts';
import { rankTest, seedsIn, type Category } from './rank-test.ts';
import { shareOf, shareTest, type Finding, type ShareFinding, type ShareTest, type Side } from './share-test.ts';
import { ofDishes, spreadOf, type Dish } from './spread.ts';
import { perhaps, perhapsSound, seedsOf, surely, surelySound, type SeedCount } from './surely.ts';

/**
 * What the test of the germinated seed alone gets of the error of a claim; the share and the pace of all the seed go
 * along with each other and have the rest together.
 */
const SOONER_SHARE = 0.1;

/**
 * From the first to the last day of the looks of several dishes, from day 0; a dish that nobody had looked at counts
 * there.
 */
export interface Looks {
  readonly from: number;
  readonly to: number;
}

/** Of ranks: what several lots add up. */
export interface RankFinding extends Finding {
  readonly excess: number;
  readonly variance: number;
}

/** What the two sides had at one age. */
export interface Gap {
  readonly first: Share;
  readonly second: Share;
  readonly firstDays: Looks;
  readonly secondDays: Looks;
}

/** The evidence that one side is ahead of another, whatever happened between the looks. */
export interface Claim {
  readonly ages: Ages;
  /** The looks behind the shares. */
  readonly looks: { readonly first: Looks; readonly second: Looks };
  /** The same behind the shares of sound seedlings, which nobody may have looked at as long. */
  readonly soundLooks: Claim['looks'];
  /** By the last looks, where they speak against it: it may not have lasted. */
  readonly inTheEnd: InTheEnd | undefined;
  readonly germinated: ShareFinding;
  readonly sound: ShareFinding;
  /** Whether the first side was ahead over the days: of all the seed, so that both how soon and how much count. */
  readonly ahead: RankFinding | Undefined;
  /** Whether that seed of the first side which germinated did so sooner. */
  readonly sooner: RankFinding | Undefined;
  /** The age at which the first side was furthest ahead. */
  readonly gap: Gap;
  /** Of the share germinated with the pace of all the seed, and with the share of sound seedlings. */
  readonly correlations: { readonly ahead: number | undefined; readonly sound: number };
  /** The smallest of the findings that the claim may rest on. */
  readonly p: number;
}

/**
 * Tests the claim that the first side is ahead of the second: more germinated, more sound seedlings, sooner. Between
 * two looks the first side counts what was surely there by then, and the second side what can have been there, so a
 * side that was looked at later or more often is not ahead for that reason. `roads` are the findings that the claim
 * may rest on; they share its error.
 *
 * Courses must be without fault. Undefined where no age has looks of both sides.
 */
export function claimOf(first: Side, second: Side, roads: Roads): Claim | Undefined {
  const [a, b] = [first.flat(), second.flat()];
  const ages = agesFor(a, b);
  if (!ages) return undefinedBecause('no day has looks at both sides');
  const { final } = ages;
  const germinated = shareTest(first, second, surely(final), perhaps(final));
  const soundAge = soundAgeIn(ages, a);
  const sound = shareTest(first, second, surelySound(soundAge), perhapsSound(soundAge));
  const untimed = [...a, ...b].find(course => course.untimed !== undefined)?.untimed;
  const [ahead, sooner] = untimed === undefined
    ? [paceTest(first, second, ages), soonerTest(first, second, ages)]
    : [undefinedBecause(untimed), undefinedBecause(untimed)];
  const correlations = { ahead: isUndefined(ahead) ? undefined : ahead.correlation, sound: nested(germinated, sound) };
  const found = togetherOf({ germinated, sound, ahead, sooner }, correlations, roads);
  return {
    ages, looks: looksAt(a, b, final), soundLooks: looksAt(a, b, soundAge), inTheEnd: inTheEnd(first, second, final),
    ...found, correlations,
    gap: gapOf(first, second, ages.all),
  };
}

/** No later than the last look at all seedlings of the first side: what came of them since is not known. */
function soundAgeIn({ all, final }: Ages, first: readonly Course[]): number {
  const last = Math.min(final, ...first.filter(course => finalTotal(course, 'germinated') > 0)
    .map(course => Math.min(lastLook(course), course.seedlingsUntil ?? Infinity)));
  return all.findLast(age => age <= last) ?? all[0]!;
}

/** The tests of a claim before they make room for each other. */
export interface Tests<S extends Plain, R extends Plain> {
  readonly germinated: S;
  readonly sound: S;
  readonly ahead: R | Undefined;
  readonly sooner: R | Undefined;
}

/** The tests of a claim with room for each other, and the smallest p-value of those that the claim may rest on. */
export function togetherOf<S extends Plain, R extends Plain>(
  { germinated, sound, ahead, sooner }: Tests<S, R>, correlations: Claim['correlations'], roads: Roads,
): Tests<S & Finding, R & Finding> & { readonly p: number } {
  const isSoundRoad = roads === 'more, sooner or sounder';
  const beside = [correlations.ahead, isSoundRoad ? correlations.sound : undefined]
    .filter(other => other !== undefined);
  const share = isUndefined(sooner) ? 1 : 1 - SOONER_SHARE;
  const together = <T extends Plain>(finding: T): T & Finding => (
    { ...finding, joint: Math.min(1, jointP(finding.p, beside) / share) });
  const found = {
    germinated: together(germinated),
    sound: together(sound),
    ahead: isUndefined(ahead) ? ahead : together(ahead),
    sooner: isUndefined(sooner) ? sooner : { ...sooner, joint: Math.min(1, sooner.p / SOONER_SHARE) },
  };
  const roadsOpen = [found.germinated, found.ahead, found.sooner, ...(isSoundRoad ? [found.sound] : [])];
  return { ...found, p: Math.min(...roadsOpen.map(finding => (isUndefined(finding) ? 1 : finding.joint))) };
}

export type Roads = 'more or sooner' | 'more, sooner or sounder';

export type Plain = Omit<Finding, 'joint'>;

type Count = (age: number) => SeedCount;

function looksAt(first: readonly Course[], second: readonly Course[], age: number): Claim['looks'] {
  const span = (days: readonly (number | undefined)[]): Looks => {
    const known = days.map(day => day ?? Math.min(0, age));
    return { from: Math.min(...known), to: Math.max(...known) };
  };
  return {
    first: span(first.map(course => lookBefore(course, age))),
    second: span(second.map(course => lookAfter(course, age))),
  };
}

function gapOf(first: Side, second: Side, ages: readonly number[]): Gap {
  const gaps = ages.map(age => ({ age, first: shareOf(first, surely(age)), second: shareOf(second, perhaps(age)) }));
  const lead = ({ first: a, second: b }: typeof gaps[number]): number => a.x / a.n - b.x / b.n;
  const { age, ...found } = gaps.reduce((best, gap) => (lead(gap) > lead(best) ? gap : best));
  const looks = looksAt(first.flat(), second.flat(), age);
  return { ...found, firstDays: looks.first, secondDays: looks.second };
}

/** Correlation of two shares of which one is a part of the other, over the seeds of both sides. */
function nested(whole: ShareTest, part: ShareTest): number {
  const share = ({ first, second }: typeof whole) => (first.x + second.x) / (first.n + second.n);
  const [p, q] = [share(whole), share(part)];
  return p < 1 && q > 0 ? Math.sqrt((q * (1 - p)) / (p * (1 - q))) : 0;
}

const ONE_SPAN = 'all the germinated seed was found between the same two looks';

type Ranked = Omit<RankFinding, 'joint'>;

interface Pace extends Ranked {
  /** With the share germinated at the final age. */
  readonly correlation: number;
}

function paceTest(first: Side, second: Side, { all, final }: Ages): Pace | Undefined {
  if (all.length < 2) return undefinedBecause('both sides were looked at only once by the same age');
  const dishes = (side: Side, counts: Count) => (
    side.map(batches => batches.map(course => categoriesOf(course, all, counts))));
  const [a, b] = [dishes(first, surely), dishes(second, perhaps)];
  const categories = [...all, Infinity].map((_, i): Category => ({ first: totalOf(a, i), second: totalOf(b, i) }));
  if (categories.slice(0, -1).filter(category => seedsIn(category) > 0).length < 2) {
    return undefinedBecause(ONE_SPAN);
  }
  const { scores, ...found } = ranked(categories, [...a, ...b]);
  const isUp = all.map(age => Number(age <= final));
  return { ...found, correlation: correlationOf(categories.map(seedsIn), scores, [...isUp, 0]) };
}

/**
 * The same of the germinated seed alone. Seed of the first side that may have come up by the final age counts as late,
 * seed of the second that may not have does not count, and what did counts as early.
 */
function soonerTest(first: Side, second: Side, { all, final }: Ages): Ranked | Undefined {
  const ages = all.filter(age => age <= final);
  const late = (course: Course): number[] => differences(
    [...ages.slice(0, -1).map(age => surely(age)(course)), atMost(course, 'germinated', final)]);
  const early = (course: Course): number[] => {
    const sure = surely(final)(course);
    return differences(ages.map(age => Math.min(sure, perhaps(age)(course))));
  };
  const [a, b] = [first.map(batches => batches.map(late)), second.map(batches => batches.map(early))];
  const categories = ages.map((_, i): Category => ({ first: totalOf(a, i), second: totalOf(b, i) }));
  if (categories.filter(category => seedsIn(category) > 0).length < 2) return undefinedBecause(ONE_SPAN);
  const { seeds, p, spread, excess, variance } = ranked(categories, [...a, ...b]);
  return { seeds, p, spread, excess, variance };
}

function ranked(
  categories: readonly Category[], treatments: readonly (readonly (readonly number[])[])[],
): Ranked & { readonly scores: readonly number[] } {
  const { p: seeds, scores, excess, variance } = rankTest(categories);
  const scored = (counts: readonly number[]): Dish => counts.map((n, i) => ({ seeds: n, score: scores[i]! }));
  const spread = spreadOf(treatments.map(treatment => treatment.map(scored)));
  return { seeds, p: ofDishes(seeds, spread, 'days'), spread, excess, variance, scores };
}

/** How many seeds of a batch came up between each age and the one before; last those that did not. */
function categoriesOf(course: Course, ages: readonly number[], counts: Count): number[] {
  return differences([...ages.map(age => counts(age)(course)), seedsOf(course)]);
}

function differences(totals: readonly number[]): number[] {
  return totals.map((total, i) => total - (totals[i - 1] ?? 0));
}

function totalOf(treatments: readonly (readonly (readonly number[])[])[], category: number): number {
  return treatments.flat().reduce((sum, counts) => sum + counts[category]!, 0);
}

function correlationOf(seeds: readonly number[], a: readonly number[], b: readonly number[]): number {
  const n = seeds.reduce((sum, each) => sum + each, 0);
  const mean = (of: (i: number) => number): number => seeds.reduce((sum, each, i) => sum + each * of(i), 0) / n;
  const [ma, mb] = [mean(i => a[i]!), mean(i => b[i]!)];
  const covariance = mean(i => (a[i]! - ma) * (b[i]! - mb));
  const variance = mean(i => (a[i]! - ma) ** 2) * mean(i => (b[i]! - mb) ** 2);
  return variance > 0 ? covariance / Math.sqrt(variance) : 0;
}
