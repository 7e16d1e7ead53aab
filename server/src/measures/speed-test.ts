import type { Course } from './course.ts';
import { holm } from './holm.ts';
import type { LifeTable } from './life-table.ts';
import { logRank, scaled, type LogRank, type Pair } from './log-rank.ts';
import { isUndefined, undefinedBecause, type Undefined } from './measured.ts';
import { sameAge } from './same-age.ts';
import { sharedTables } from './shared-checks.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Two log-rank tests of treated against untreated seed; O and E are those of the treated seed. */
export interface SpeedTests {
  /**
   * Over all the seed sown. It also sees how much germinated, but hardly a gain in days where the curves
   * meet.
   */
  readonly sown: LogRank | Undefined;
  /** Over the seed that germinated: whether that was sooner, however much it was. */
  readonly germinated: LogRank | Undefined;
  /** Both together; only tests with enough seed count, see the threshold `fewestExpected`. */
  readonly combined: SpeedFinding | Undefined;
}

export interface SpeedFinding {
  /** The smaller of the two p-values, doubled (Holm); as it is where one test counts. */
  readonly p: number;
  /** What the test with the smaller p-value found, and whether it was that of the germinated seed alone. */
  readonly faster: boolean;
  readonly ofGerminated: boolean;
}

/** The life tables of treated and untreated seed of one lot for both tests. */
export interface SpeedPairs {
  readonly sown: Pair;
  readonly germinated: Pair;
}

/**
 * The tables for the tests, on days of check that both sides share. The seed that germinated is compared at
 * one age: a side that was watched for longer would have late seed for that reason alone. Where the days of a
 * batch say nothing there is nothing to compare.
 */
export function speedPairs(treated: readonly Course[], untreated: readonly Course[]): SpeedPairs {
  const isTimed = [...treated, ...untreated].every(course => course.untimed === undefined);
  const sides = isTimed ? [treated, untreated] : [[], []];
  return {
    sown: pairOf(sharedTables(sides)),
    germinated: pairOf(sharedTables(sameAge(sides).sides).map(germinatedOnly)),
  };
}

/**
 * Tests the speed in one lot, or stratified over several. The chi-squares are divided by the overdispersion
 * of the replicates.
 *
 * @example
 * speedTests([speedPairs([treated], [untreated])]).combined
 * // { p: 0.0000031, faster: true, ofGerminated: false }
 */
export function speedTests(strata: readonly SpeedPairs[], overdispersion = 1): SpeedTests {
  const test = (pairs: readonly Pair[]): LogRank | Undefined => {
    const found = logRank(pairs);
    return isUndefined(found) ? found : scaled(found, overdispersion);
  };
  const sown = test(strata.map(pairs => pairs.sown));
  const germinated = test(strata.map(pairs => pairs.germinated));
  return { sown, germinated, combined: combine(sown, germinated) };
}

function combine(sown: LogRank | Undefined, germinated: LogRank | Undefined): SpeedFinding | Undefined {
  const sound = [sown, germinated].filter(isSound).sort((a, b) => a.p - b.p);
  const [smallest] = sound;
  if (!smallest) return undefinedBecause('too few germinated to compare the days');
  return {
    p: holm(sound.map(test => test.p))[0]!,
    faster: smallest.observed > smallest.expected,
    ofGerminated: smallest === germinated,
  };
}

/**
 * With fewer seeds the chi-square of a log-rank test finds differences where there are none. Where all was found on
 * one day it says nothing of speed: it would be a test of the shares, and a bolder one than Fisher's.
 */
function isSound(test: LogRank | Undefined): test is LogRank {
  const fewest = THRESHOLDS.fewestExpected.value;
  return !isUndefined(test) && test.days > 1 && test.expected >= fewest && test.total - test.expected >= fewest;
}

function germinatedOnly(table: LifeTable): LifeTable {
  return table.map(exit => ({ ...exit, censored: 0 })).filter(({ germinated }) => germinated > 0);
}

function pairOf([first, second]: readonly LifeTable[]): Pair {
  return { first: first!, second: second! };
}
