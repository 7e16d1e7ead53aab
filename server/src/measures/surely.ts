/**
 * What was surely there at an age, and the most that can have been, whatever happened between two looks. A claim counts
 * the first of the side that it says was ahead, and the second of the other.
 */
import type { Course } from './course.ts';
import { atLeast, atMost } from './looks.ts';
import { WEAK } from './weak.ts';

export type SeedCount = (course: Course) => number;

/**
 * The seeds of a batch that count: sown, less those that were lost before any had germinated. What was lost later may
 * have germinated or not.
 */
export function seedsOf({ sown, checks }: Course): number {
  return sown - lostEarly(checks);
}

function lostEarly(checks: Course['checks']): number {
  return checks.findLast(({ germinated }) => germinated === 0)?.lost ?? 0;
}

export function surely(age: number): SeedCount {
  return course => atLeast(course, 'germinated', age);
}

/** Seed that was lost by the next look may have germinated before. */
export function perhaps(age: number): SeedCount {
  return course => Math.min(
    seedsOf(course),
    atMost(course, 'germinated', age) + Math.max(0, atMost(course, 'lost', age) - lostEarly(course.checks)));
}

export function surelySound(age: number): SeedCount {
  return course => {
    const up = atLeast(course, 'germinated', age);
    const weak = WEAK.reduce((sum, what) => sum + atMost(course, what, age), 0);
    return up - Math.min(up, weak);
  };
}

/** A leggy seedling that died is one weak seedling: at least as many are weak as the greatest of the three totals. */
export function perhapsSound(age: number): SeedCount {
  return course => {
    const up = perhaps(age)(course);
    return up - Math.min(up, Math.max(...WEAK.map(what => atLeast(course, what, age))));
  };
}
