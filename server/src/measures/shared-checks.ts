import type { Course } from './course.ts';
import { lifeTable, type LifeTable } from './life-table.ts';

/**
 * The life tables of several sides on days that all of their batches share.
 *
 * A batch that is checked daily shows its seed earlier than one checked every other week, though both
 * germinate alike. So the days are taken together from one point at which every batch had been checked to the
 * next one, and seed counts on the last day of such a span. Batches checked on the same days keep them. A
 * batch is not waited for after its last check.
 *
 * Common practice for grouped survival times, no source. Courses must be without fault.
 *
 * @example
 * // One side checked on days 4, 6, 8, the other on day 8 only: all seed of the first counts on day 8.
 * sharedTables([
 *   [{ sown: 5, checks: [{ day: 4, germinated: 2 }, { day: 6, germinated: 3 }, { day: 8, germinated: 4 }] }],
 *   [{ sown: 5, checks: [{ day: 8, germinated: 4 }] }]])
 * // [[{ day: 8, germinated: 4, censored: 1 }], [{ day: 8, germinated: 4, censored: 1 }]]
 */
export function sharedTables(sides: readonly (readonly Course[])[]): readonly LifeTable[] {
  const closing = closingDays(sides.flat());
  return sides.map(side => lifeTable(side.map(course => ({
    ...course,
    checks: course.checks.map(check => ({ ...check, day: closing.get(check.day)! })),
  }))));
}

/** For each day of a check, the day on which its span ends. */
function closingDays(courses: readonly Course[]): ReadonlyMap<number, number> {
  const checked = courses.map(({ checks }) => new Set(checks.map(({ day }) => day)));
  const last = courses.map(({ checks }) => checks.at(-1)!.day);
  const days = [...new Set(courses.flatMap(({ checks }) => checks.map(({ day }) => day)))].sort((a, b) => a - b);
  const closing = new Map<number, number>();
  let span: number[] = [];
  for (const day of days) {
    span.push(day);
    const start = span[0]!;
    const complete = checked.every((own, i) => last[i]! < start || span.some(seen => own.has(seen)));
    if (!complete && day !== days.at(-1)) continue;
    for (const seen of span) closing.set(seen, day);
    span = [];
  }
  return closing;
}
