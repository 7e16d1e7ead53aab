import type { Course } from './course.ts';
import { ROUNDING } from './difference.ts';
import { fisher, reaches } from './fisher.ts';
import { until } from './looks.ts';
import { THRESHOLDS } from './thresholds.ts';

export const WEAK = ['leggy', 'abnormal', 'died'] as const;

/** Seedlings of one side that are weak, of those that germinated. */
export interface WeakSeedlings {
  /** Where all that died had been leggy or abnormal before. */
  readonly least: number;
  /** Where each is counted under one word only. */
  readonly most: number;
  readonly of: number;
  readonly leggy: number;
  readonly abnormal: number;
  readonly died: number;
}

/**
 * The weak seedlings (leggy, abnormal or dead) of some batches up to an age. A leggy seedling that died is one weak
 * seedling: where a record cannot say whether two words are about the same one, the number has limits.
 */
export function weakSeedlings(courses: readonly Course[], age: number): WeakSeedlings {
  const last = courses.map(course => until(course, age).checks.at(-1));
  const sum = (count: (check: NonNullable<typeof last[number]>) => number): number => (
    last.reduce((total, check) => total + (check ? count(check) : 0), 0));
  return {
    least: sum(check => Math.min(check.germinated, Math.max(...WEAK.map(what => check[what] ?? 0)))),
    most: sum(check => Math.min(check.germinated, WEAK.reduce((all, what) => all + (check[what] ?? 0), 0))),
    of: sum(check => check.germinated),
    leggy: sum(check => check.leggy ?? 0),
    abnormal: sum(check => check.abnormal ?? 0),
    died: sum(check => check.died ?? 0),
  };
}

/** Weak seedlings of both sides of a comparison. */
export interface BothWeak {
  readonly treated: WeakSeedlings;
  readonly untreated: WeakSeedlings;
}

/** Their shares of the seedlings, where the words are about the same ones on both sides, and where they never are. */
export const READINGS = ['least', 'most'] as const;

/**
 * Whether weak seedlings are more frequent on one side than on the other, if only by one reading of the words: shown to
 * be, or by more than the tolerated loss as they were counted. Where next to nothing of the other germinates, nothing
 * could be shown of its seedlings; and where most seedlings are weak, germination is worth nothing. This takes a claim
 * back and makes none.
 */
export function isWeakerThan(one: WeakSeedlings, other: WeakSeedlings): boolean {
  return isMoreOften(one, other) || isMostlyWeak(one, other) || READINGS.some(reading => {
    if (one.of === 0 || other.of === 0) return false;
    const { greater } = fisher({ x: one[reading], n: one.of }, { x: other[reading], n: other.of });
    return reaches(greater, THRESHOLDS.level.value);
  });
}

/** More than half of them; or more than is tolerated, beside too few others to tell. */
export function isMostlyWeak({ least, of }: Counted, other: Counted): boolean {
  const { fewestSeeds, toleratedLoss } = THRESHOLDS;
  return 2 * least > of || (other.of < fewestSeeds.value && least > toleratedLoss.value * of + ROUNDING);
}

type Counted = Pick<WeakSeedlings, 'of' | typeof READINGS[number]>;

/** As counted, of one lot or of several together; of no seedlings none is weak. */
export function isMoreOften(treated: Counted, untreated: Counted): boolean {
  const share = (side: Counted, reading: typeof READINGS[number]) => (side.of === 0 ? 0 : side[reading] / side.of);
  return READINGS.some(reading => (
    share(treated, reading) - share(untreated, reading) > THRESHOLDS.toleratedLoss.value + ROUNDING));
}

/** The weak seedlings of a side in all lots together. */
export function weakOver(found: readonly WeakSeedlings[]): Pick<WeakSeedlings, 'least' | 'most' | 'of'> {
  return found.reduce(
    (sum, { least, most, of }) => ({ least: sum.least + least, most: sum.most + most, of: sum.of + of }),
    { least: 0, most: 0, of: 0 });
}
