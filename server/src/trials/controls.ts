/** Several untreated groups beside one treatment: which of them it is held against must not decide for it. */
import { fisher, reaches } from '../measures/fisher.ts';
import type { Share } from '../measures/difference.ts';
import { commonAge, until } from '../measures/looks.ts';
import { poolOf } from '../measures/replicates.ts';
import { coursesOf, type Group } from './groups.ts';

/** Chance alone makes one of two alike groups so much better 1 time in 20. Common practice, no source. */
const LEVEL = 0.05;

/**
 * Names another untreated group under the same conditions in which so many more seeds germinated than in the one that
 * treated seed is compared with that a benefit may be a fault of that one; undefined where there is none.
 *
 * @example
 * betterControlText(water, [dry]) // 'the untreated seed (of L/B 3 of 24 germinated, of L/C 19 of 24)'
 */
export function betterControlText(compared: Group, others: readonly Group[]): string | undefined {
  for (const other of others) {
    const age = commonAge([...coursesOf(compared), ...coursesOf(other)]);
    const [own, better] = [shareBy(compared, age), shareBy(other, age)];
    if (!reaches(fisher(better, own).greater, LEVEL)) continue;
    return `the untreated seed (of ${pathsOf(compared)} ${own.x} of ${own.n} germinated, of ${pathsOf(other)} ${better.x} of ${better.n})`;
  }
  return undefined;
}

function shareBy(group: Group, age: number): Share {
  return poolOf(coursesOf(group).map(course => until(course, age)));
}

function pathsOf({ batches }: Group): string {
  return batches.map(({ batch }) => batch.path).join(' and ');
}
