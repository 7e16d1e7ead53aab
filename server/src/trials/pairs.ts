/** Treated seed beside the untreated seed of its lot that is most like it. */
import { lastOfTotals } from '../journal/as-totals.ts';
import type { Ignored } from '../calendar/judge-days.ts';
import { commonAge } from '../measures/looks.ts';
import type { Sides } from '../measures/seen.ts';
import type { Course } from '../measures/course.ts';
import { isoOf } from '../model/day.ts';
import { differencesOf, type Differences } from './conditions.ts';
import { isAboutAsLong, type Range } from './alike.ts';
import { betterControlText } from './controls.ts';
import { countedAsText } from './counted-as.ts';
import { emptySeedText } from './empty-seed.ts';
import { coursesOf, type Group } from './groups.ts';
import { judgedCourse, judgingOf, type Judging } from './judging.ts';
import { oddIn } from './odd.ts';
import { isActive } from './treatment.ts';

export interface Pair {
  readonly treated: Group;
  /** Undefined where no untreated seed of the lot was counted. */
  readonly untreated: Group | undefined;
  /** What else differs, in plain words: the difference is no effect of the treatment then. */
  readonly alsoDiffers: readonly string[];
  /** A `judge` record that binds the comparison. */
  readonly judging: Judging | undefined;
  /** Records that do not, with the reason. */
  readonly ignored: readonly Ignored[];
  /** What has to be known to read the comparison, each the end of a sentence. */
  readonly remarks: readonly string[];
}

/** A pair with untreated seed. */
export type FullPair = Pair & { readonly untreated: Group };

export function pairOf(treated: Group, untreated: readonly Group[]): Pair {
  const candidates = untreated.map(group => ({ group, ...differencesBetween(treated, group) }));
  const [best, ...others] = candidates.sort((a, b) => a.differing.length - b.differing.length
    || Number(isWet(b.group)) - Number(isWet(a.group))
    || a.minor.length + a.unwritten.length - b.minor.length - b.unwritten.length
    || seedsOf(b.group) - seedsOf(a.group));
  if (!best) return { treated, untreated: undefined, alsoDiffers: [], remarks: [], ...judgingOf(treated.batches) };
  const judged = judgingOf([...treated.batches, ...best.group.batches]);
  const own = remarksOf(treated, best.group, best.unwritten);
  const remarks = [...best.minor, ...own, ...judged.ignored.map(ignoredText)];
  const empty = emptySeedText(coursesOf(treated), coursesOf(best.group));
  const countedAs = countedAsText(treated, best.group);
  const alike = others.filter(({ differing }) => differing.length === 0).map(({ group }) => group);
  const better = best.differing.length > 0 ? undefined : betterControlText(best.group, alike);
  const alsoDiffers = [...best.differing, empty, countedAs, better].filter(text => text !== undefined);
  return { treated, untreated: best.group, alsoDiffers, remarks, ...judged };
}

function ignoredText({ record: { entry: { moment } }, why }: Ignored): string {
  const written = `the “judge” of ${isoOf(moment.day)} does not count, because`;
  return why === 'seed was seen'
    ? `${written} you had seen seed germinate or rot by then`
    : `${written} an earlier one counts instead`;
}

export function isFull(pair: Pair): pair is FullPair {
  return pair.untreated !== undefined;
}

/** Of all batches of both sides, up to the age at which they are compared. */
function differencesBetween(a: Group, b: Group): Differences {
  const day = commonAge([...coursesOf(a), ...coursesOf(b)]);
  const all = a.batches.flatMap(({ conditions }) => (
    b.batches.map(other => differencesOf(conditions, other.conditions, day))));
  return {
    differing: [...new Set(all.flatMap(({ differing }) => differing))],
    minor: [...new Set(all.flatMap(({ minor }) => minor))],
    unwritten: [...new Set(all.flatMap(({ unwritten }) => unwritten))],
  };
}

function remarksOf(treated: Group, untreated: Group, unwritten: readonly string[]): string[] {
  const remarks = unwritten.map(name => `the ${name} is recorded for one side only`);
  if (!isWet(untreated)) remarks.push('the untreated seed was not soaked in water, so this shows the soaking and the treatment together');
  const longer = longerText(treated, untreated);
  if (longer !== undefined) remarks.push(longer);
  const bottles = bottlesOf(treated);
  if (bottles.length > 1) remarks.push(`the treated batches were soaked from different bottles: ${bottles.join(', ')}`);
  if (hasOwnPinches(treated)) {
    remarks.push('the treated batches were given a pinch each, so their doses may differ');
  }
  for (const { batch } of [...treated.batches, ...untreated.batches]) {
    if (lastOfTotals(batch)) remarks.push(`the counts of ${batch.path} look like totals so far: if they are, put “=” before each number, and read the verdict again`);
  }
  for (const { batch, dish, others } of [treated, untreated].flatMap(group => oddIn(group) ?? [])) {
    remarks.push(`${batch.path} does not go with the other dishes of its side (${dish.x} of ${dish.n}, the others ${others.x} of `
      + `${others.n}): look for what was different there`);
  }
  for (const { batch, endedBy } of [...treated.batches, ...untreated.batches]) {
    if (endedBy?.type === 'soak') remarks.push(`${batch.path} is compared up to the day on which it was soaked itself`);
    if (endedBy?.type === 'apply') remarks.push(`${batch.path} is compared up to the day on which drops can have reached its seed`);
    if (endedBy?.type === 'split' || endedBy?.type === 'leave') {
      const how = endedBy.type === 'split' ? 'was split off it' : 'of it left';
      remarks.push(`${batch.path} is compared up to the day on which seed ${how}`);
    }
  }
  if (hasDrops(treated) !== hasDrops(untreated)) {
    remarks.push('seedlings of one side were given drops, so weak seedlings are not compared');
  }
  return remarks;
}

/** A day in the liquid against two hours of it: the water alone may be what did it. */
function longerText(treated: Group, untreated: Group): string | undefined {
  const wet = ({ batches }: Group) => wholeOf(batches.map(({ conditions }) => conditions.wet));
  const [first, second] = [wet(treated), wet(untreated)];
  if (!first || !second || isAboutAsLong(first, second)) return undefined;
  return `the treated seed was in liquid for ${hoursText(first)} and the untreated seed for ${hoursText(second)}, so this shows the `
    + 'length of the soak and the treatment together';
}

function wholeOf(ranges: readonly (Range | undefined)[]): Range | undefined {
  const known = ranges.filter(range => range !== undefined);
  if (known.length < ranges.length) return undefined;
  return { least: Math.min(...known.map(({ least }) => least)), most: Math.max(...known.map(({ most }) => most)) };
}

/** Example: '24 h', '20 to 24 h' */
function hoursText({ least, most }: Range): string {
  const [from, to] = [least, most].map(minutes => String(Math.round(minutes / 6) / 10));
  return from === to ? `${from!} h` : `${from!} to ${to!} h`;
}

/** The bottles that the batches were soaked from; one entry for each set of them. */
function bottlesOf({ batches }: Group): string[] {
  const soaked = batches.map(({ treatment }) => treatment
    .flatMap(({ soak }) => soak.doses.filter(isActive))
    .flatMap(({ parts }) => parts.flatMap(({ stock }) => stock ?? [])));
  return [...new Set(soaked.filter(stocks => stocks.length > 0).map(stocks => [...new Set(stocks)].sort().join(' + ')))];
}

/** Whether batches had unmeasured soaks of their own; parts of what was soaked as one shared a pinch. */
function hasOwnPinches({ batches }: Group): boolean {
  const soaks = batches.flatMap(({ treatment }) => treatment
    .find(({ soak }) => soak.doses.some(dose => dose.unmeasured && isActive(dose)))?.soak.entry.line ?? []);
  return new Set(soaks).size > 1;
}

export interface PairCourses extends Sides {
  /** As they were counted later, where they are cut at a day of judging. */
  readonly whole: Sides | undefined;
}

/**
 * The courses of both sides, as they are judged; without the state of the seedlings where drops may have changed it on
 * one of them.
 */
export function coursesOfPair({ treated, untreated, judging }: FullPair): PairCourses {
  const hasSeedlings = hasDrops(treated) === hasDrops(untreated);
  const sides = (of: (group: Group) => Course[]): Sides => {
    const told = (group: Group) => (hasSeedlings ? of(group) : of(group).map(withoutSeedlings));
    return { treated: told(treated), untreated: told(untreated) };
  };
  const whole = sides(coursesOf);
  return judging
    ? { ...sides(group => group.batches.map(batch => judgedCourse(batch, judging))), whole }
    : { ...whole, whole: undefined };
}

function withoutSeedlings(course: Course): Course {
  return { ...course, checks: course.checks.map(check => ({ ...check, leggy: 0, abnormal: 0, died: 0 })) };
}

function isWet({ batches }: Group): boolean {
  return batches.some(({ conditions }) => conditions.isWet);
}

function hasDrops({ batches }: Group): boolean {
  return batches.some(({ conditions }) => conditions.hasDrops);
}

function seedsOf({ batches }: Group): number {
  return batches.reduce((sum, { course }) => sum + course.sown, 0);
}
