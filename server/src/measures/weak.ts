import type { Course } from './course.ts';
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
 * Whether weak seedlings are more frequent on the treated side, if only by one reading of the words: shown to be, or by
 * more than the tolerated loss as they were counted. Where next to no untreated seed germinates, nothing could be shown
 * of its seedlings. This takes a claim back and makes none.
 */
export function isWeaker({ treated, untreated }: BothWeak): boolean {
  return isMoreOften(treated, untreated) || READINGS.some(reading => {
    if (treated.of === 0 || untreated.of === 0) return false;
    const { greater } = fisher({ x: treated[reading], n: treated.of }, { x: untreated[reading], n: untreated.of });
    return reaches(greater, THRESHOLDS.level.value);
  });
}

type Counted = Pick<WeakSeedlings, 'of' | typeof READINGS[number]>;

/** As counted, of one lot or of several together; of no seedlings none is weak. */
export function isMoreOften(treated: Counted, untreated: Counted): boolean {
  const share = (side: Counted, reading: typeof READINGS[number]) => (side.of === 0 ? 0 : side[reading] / side.of);
  return READINGS.some(reading => (
    share(treated, reading) - share(untreated, reading) > THRESHOLDS.toleratedLoss.value + ROUNDING));
}

/** 12 of 40 less 4 of 40 is not quite 0.2. */
const ROUNDING = 1e-9;
