import type { Batch } from '../journal/life.ts';
import { germinated, shareOf } from '../measures/contrast.ts';
import { seedsCounted } from '../measures/course.ts';
import { until } from '../measures/looks.ts';
import { oddDish, type OddDish } from '../measures/odd-dish.ts';
import { ageTogether } from '../measures/shared-looks.ts';
import { coursesOf, type Group } from './groups.ts';

/**
 * The batch of a group of replicates that does not go with the others, at the last age at which all of them were looked
 * at.
 */
export function oddIn(group: Group): (OddDish & { readonly batch: Batch }) | undefined {
  const courses = coursesOf(group);
  const age = ageTogether(courses);
  if (age === undefined) return undefined;
  const odd = oddDish(courses.map(course => shareOf([until(course, age)], germinated, seedsCounted)));
  return odd && { ...odd, batch: group.batches[odd.index]!.batch };
}
