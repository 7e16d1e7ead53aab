import { expect } from 'vitest';
import type { Course } from '../../server/src/measures/course.ts';
import type { LifeTable } from '../../server/src/measures/life-table.ts';
import type { Known, Undefined } from '../../server/src/measures/measured.ts';

/**
 * A course that is over, from new germinants as 'day:count' and the days of other checks; `more` adds to the last
 * check.
 */
export function course(sown: number, fresh: string, days: readonly number[] = [], more: object = {}): Course {
  const found = new Map(fresh.split(' ').filter(Boolean).map(part => part.split(':').map(Number) as [number, number]));
  let germinated = 0;
  const checks = [...new Set([...days, ...found.keys()])].sort((a, b) => a - b).map(day => {
    germinated += found.get(day) ?? 0;
    return { day, germinated };
  });
  const counted = checks.map((check, i) => (i === checks.length - 1 ? { ...check, ...more } : check));
  return { sown, checks: counted, closed: true };
}

function daily(last: number): readonly number[] {
  return Array.from({ length: last }, (_, i) => i + 1);
}

/** A life table from the days of each event and each censoring. */
function exits(germinated: readonly number[], censored: readonly number[] = []): LifeTable {
  const days = [...new Set([...germinated, ...censored])].sort((a, b) => a - b);
  const on = (list: readonly number[], day: number) => list.filter(d => d === day).length;
  return days.map(day => ({ day, germinated: on(germinated, day), censored: on(censored, day) }));
}

/** The value of a number that must be defined. */
export function valueOf(measured: Known | Undefined): number {
  expect(measured).toHaveProperty('value');
  return (measured as Known).value;
}

/** A result that must not be undefined. */
export function known<T extends object>(result: T | Undefined): T {
  expect(result).not.toHaveProperty('undefined');
  return result as T;
}

/** Equal to ten significant digits. */
export function expectClose(actual: number, wanted: number): void {
  expect(Math.abs(actual - wanted), `${actual} is not ${wanted}`).toBeLessThanOrEqual(1e-10 * Math.max(1e-3, Math.abs(wanted)));
}

/** Crowder 1978, Appl Stat 27:34-37, Table 3: germinated and sown seed of 21 plates of Orobanche. */
export const CROWDER = {
  'O. aegyptiaca 75, bean': [[10, 39], [23, 62], [23, 81], [26, 51], [17, 39]],
  'O. aegyptiaca 75, cucumber': [[5, 6], [53, 74], [55, 72], [32, 51], [46, 79], [10, 13]],
  'O. aegyptiaca 73, bean': [[8, 16], [10, 30], [8, 28], [23, 45], [0, 4]],
  'O. aegyptiaca 73, cucumber': [[3, 12], [22, 41], [15, 30], [32, 51], [3, 7]],
} as const;

/** Freireich et al. 1963, Blood 21:699-716: weeks of remission; an event here is a relapse. */
export const FREIREICH = {
  treated: exits([6, 6, 6, 7, 10, 13, 16, 22, 23], [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]),
  placebo: exits([1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23]),
};

/** R's data set UCBAdmissions: men admitted and rejected, women admitted and rejected, departments A to F. */
export const UCB_ADMISSIONS = [
  [512, 313, 89, 19], [353, 207, 17, 8], [120, 205, 202, 391],
  [138, 279, 131, 244], [53, 138, 94, 299], [22, 351, 24, 317],
] as const;

export function strata(tables: readonly (readonly [number, number, number, number])[]) {
  return tables.map(([a, b, c, d]) => ({ first: { x: a, n: a + b }, second: { x: c, n: c + d } }));
}

/** Five invented courses, with results worked out as exact fractions. */
export const COURSES = {
  D1: course(25, '5:2 6:5 7:6 8:4 9:2 11:1', daily(12)),
  D2: course(40, '5:3 7:9 10:12 14:6 21:2', [3, 28]),
  D3: course(10, '9:1', [3, 6, 12]),
  D4: course(12, '6:12', [3, 9]),
  D5: course(20, '4:3 6:6 8:5 10:3 14:1', [21, 28]),
};
