/** Whether a share of the seeds is greater on the first side than on the second. */
import { boschloo } from './boschloo.ts';
import type { Course } from './course.ts';
import type { Share } from './difference.ts';
import { ofDishes, spreadOf, type Dish, type Spread } from './spread.ts';
import { seedsOf, type SeedCount } from './surely.ts';

/** Batches by treatment; those of one treatment are its dishes. */
export type Side = readonly (readonly Course[])[];

/** What one test says for the claim, one-sided. */
export interface Finding {
  /** Of single seeds, exact. */
  readonly seeds: number;
  /** The same as the dishes allow it, see ofDishes. */
  readonly p: number;
  /** The same with room for the other tests of the claim. */
  readonly joint: number;
  readonly spread: Spread;
}

export interface ShareFinding extends Finding {
  /** The least of the first side, and the most of the second, that the looks allow. */
  readonly first: Share;
  readonly second: Share;
}

/** A test of shares that leaves others no room. */
export type ShareTest = Omit<ShareFinding, 'joint'>;

/** Tests that a greater share of the first side counts than of the second, as its dishes allow it. */
export function shareTest(
  first: Side, second: Side, least: SeedCount, most: SeedCount,
): ShareTest {
  const shares = { first: shareOf(first, least), second: shareOf(second, most) };
  const dishOf = (course: Course, x: number): Dish => [
    { seeds: x, score: 1 }, { seeds: seedsOf(course) - x, score: 0 }];
  const dishes = (side: Side, count: SeedCount): Dish[][] => (
    side.map(batches => batches.map(course => dishOf(course, count(course)))));
  const spread = spreadOf([...dishes(first, least), ...dishes(second, most)]);
  const seeds = boschloo(shares.first, shares.second);
  return { ...shares, seeds, p: ofDishes(seeds, spread, 'share'), spread };
}

export function shareOf(side: Side, count: SeedCount): Share {
  const courses = side.flat();
  return {
    x: courses.reduce((sum, course) => sum + count(course), 0),
    n: courses.reduce((sum, course) => sum + seedsOf(course), 0),
  };
}
