import { contrast, germinated, shareOf, sound, weak, type Contrast, type Count } from './contrast.ts';
import { faultOf, finalTotal, seedsCounted, type Course } from './course.ts';
import { t50Coolbear, timeOfSown, type GerminationTime } from './germination-time.ts';
import { isUndefined, measured, undefinedBecause, type Measured, type Undefined } from './measured.ts';
import { mergeCourses } from './merge.ts';
import { jointOverdispersion, poolOf, type Pooled } from './replicates.ts';
import { sameAge } from './same-age.ts';
import { speedPairs, speedTests, type SpeedTests } from './speed-test.ts';

/** Treated against untreated seed of one lot. */
export interface Comparison {
  /**
   * The age in days up to which all but the log-rank test of the seed sown counts both sides, see sameAge.
   */
  readonly byDay: number;
  /** Seeds that may still germinate and change this; 0 on both sides where it is settled. */
  readonly open: { readonly treated: number; readonly untreated: number };
  readonly treated: Pooled;
  readonly untreated: Pooled;
  /** Of both sides together, see replicates. */
  readonly overdispersion: number;
  /** Of the seed sown less lost. */
  readonly germinated: Contrast;
  /** Germinated less leggy, abnormal and died; of the seed sown less lost. */
  readonly sound: Contrast;
  /** Shares of the germinated seed; `weak` is leggy, abnormal and died together. */
  readonly seedlings: Readonly<Record<'weak' | 'leggy' | 'abnormal' | 'died', Contrast | Undefined>>;
  readonly speed: SpeedTests;
  /** Treated less untreated, days; T50 of Coolbear. Undefined where no check shows which side was earlier. */
  readonly t50: Measured;
  /** The same for half of the seed sown. */
  readonly t50OfSown: Measured;
  readonly untreatedT50OfSown: GerminationTime | Undefined;
}

/**
 * Compares the treated batches of a lot with its untreated ones; the batches of a side are its replicates.
 * Undefined when a batch cannot be measured: leave it out first.
 */
export function compare(treated: readonly Course[], untreated: readonly Course[]): Comparison | Undefined {
  return compareParts([treated], untreated);
}

/**
 * The same where the treated seed is of several treatments, such as the doses of an agent: only batches with
 * the same treatment are replicates of each other, what differs between the treatments is no overdispersion.
 */
export function compareParts(
  parts: readonly (readonly Course[])[], untreated: readonly Course[],
): Comparison | Undefined {
  const treated = parts.flat();
  if (treated.length === 0 || untreated.length === 0) return undefinedBecause('there is no batch to compare with');
  const fault = [...treated, ...untreated].map(faultOf).find(found => found !== undefined);
  if (fault) return fault;
  const { day, sides, open } = sameAge([untreated, ...parts]);
  const [second, ...replicates] = [sides[0]!, ...sides.slice(1)];
  const first = replicates.flat();
  const pools = { treated: poolOf(first), untreated: poolOf(second) };
  const overdispersion = jointOverdispersion([pools.untreated, ...replicates.map(poolOf)]);
  const ofSown = (count: Count): Contrast => (
    contrast(shareOf(first, count, seedsCounted), shareOf(second, count, seedsCounted), overdispersion));
  const ofSeedlings = (count: Count): Contrast | Undefined => {
    const [a, b] = [shareOf(first, count, germinated), shareOf(second, count, germinated)];
    if (a.n === 0 || b.n === 0) return undefinedBecause('nothing germinated on one side');
    return a.x <= a.n && b.x <= b.n
      ? contrast(a, b, overdispersion)
      : undefinedBecause('more such seedlings were counted than germinated');
  };
  const [a, b] = [mergeCourses(first), mergeCourses(second)];
  const speed = speedTests([speedPairs(treated, untreated)], overdispersion);
  const times = { first: a, second: b, isOneDay: isUndefined(speed.germinated) };
  return {
    byDay: day,
    open: { treated: open.slice(1).reduce((sum, seeds) => sum + seeds, 0), untreated: open[0]! },
    ...pools,
    overdispersion,
    germinated: ofSown(germinated),
    sound: ofSown(sound),
    seedlings: {
      weak: ofSeedlings(weak),
      leggy: ofSeedlings(course => finalTotal(course, 'leggy')),
      abnormal: ofSeedlings(course => finalTotal(course, 'abnormal')),
      died: ofSeedlings(course => finalTotal(course, 'died')),
    },
    speed,
    t50: daysBetween(times, t50Coolbear),
    t50OfSown: daysBetween(times, course => timeOfSown(course, 0.5)),
    untreatedT50OfSown: timeOfSown(b, 0.5),
  };
}

interface Times {
  readonly first: Course;
  readonly second: Course;
  /** One check, or one span between checks, found all the seed of both sides. */
  readonly isOneDay: boolean;
}

/** Between two lines that begin at the same check, or at none, the days differ only for want of a check. */
function daysBetween(
  { first, second, isOneDay }: Times, timeOf: (course: Course) => GerminationTime | Undefined,
): Measured {
  const [a, b] = [timeOf(first), timeOf(second)];
  if (isUndefined(a)) return undefinedBecause(`treated: ${a.undefined}`);
  if (isUndefined(b)) return undefinedBecause(`untreated: ${b.undefined}`);
  if (isOneDay) return undefinedBecause('all the germinated seed of both sides was found on one day');
  return a.by === first.checks[0]!.day && b.by === second.checks[0]!.day
    ? undefinedBecause('half of both sides was up when somebody first looked')
    : measured(a.value - b.value);
}
