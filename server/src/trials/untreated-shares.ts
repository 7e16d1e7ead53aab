/** What untreated seed of a plant did in each winter, whether anything was tried beside it or not. */
import type { Lot } from '../journal/life.ts';
import { finalTotal } from '../measures/course.ts';
import { commonAge, openSeeds, until } from '../measures/looks.ts';
import { poolOf, type Pooled } from '../measures/replicates.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import type { Day } from '../model/day.ts';
import { winterOf } from '../model/winter.ts';
import { coursesOf, type Group } from './groups.ts';
import type { LotTrial } from './lot-trial.ts';

export interface UntreatedShare {
  /** Of its day 0: '2025/26'. */
  readonly winter: string;
  readonly lot: Lot;
  readonly group: Group;
  /** Up to an age that all of its batches reached. */
  readonly pooled: Pooled;
  readonly byDay: number;
  /** Seeds that may still germinate. */
  readonly open: number;
}

/**
 * Germinated seed of all of them, and all of it. Seed that was divided off from what had begun to germinate is counted
 * where it went to, not a second time where it came from. Seed that waits in the cold says nothing yet.
 */
export function allOf(all: readonly UntreatedShare[]): { readonly x: number; readonly n: number } {
  const shares = all.filter(share => !isWaiting(share));
  return shares.reduce(({ x, n }, share) => {
    const { pooled } = share;
    const went = shares.filter(other => isDividedOff(other, share)).reduce((sum, other) => sum + other.pooled.n, 0);
    return { x: x + pooled.x, n: n + Math.max(pooled.x, pooled.n - went) };
  }, { x: 0, n: 0 });
}

/** Never sown, in the cold since its last stage, and seed of it may still germinate. */
export function isWaiting({ group: { batches }, open }: UntreatedShare): boolean {
  return open > 0
    && batches.every(({ conditions: { isSown, stages } }) => !isSown && stages.at(-1)?.what === 'chill');
}

/**
 * Whether so many days have passed since its day 0 that it speaks for its plant as it was last seen. By the calendar
 * alone: what hangs on when seed was looked at last, or on how much came up, would keep good winters and leave out bad
 * ones.
 */
export function hadItsTime({ group: { batches } }: UntreatedShare, today: Day): boolean {
  return batches.every(({ conditions: { dayZero } }) => today - dayZero >= THRESHOLDS.readyDays.value);
}

function isDividedOff({ group }: UntreatedShare, { group: { batches } }: UntreatedShare): boolean {
  return group.batches.every(({ batch: { parent } }) => batches.some(({ batch }) => batch === parent));
}

/** Seedlings of all of them that died, and all that had germinated, by the last looks. */
export function deathsIn(shares: readonly UntreatedShare[]): { readonly x: number; readonly n: number } {
  const courses = shares.flatMap(({ group }) => coursesOf(group));
  const sum = (what: 'died' | 'germinated') => courses.reduce((all, course) => all + finalTotal(course, what), 0);
  return { x: sum('died'), n: sum('germinated') };
}

/** One for each lot, or for each of the conditions that its untreated seed had, by winter. */
export function untreatedShares(trials: readonly LotTrial[]): UntreatedShare[] {
  const shares = trials.flatMap(({ lot, groups }) => groups
    .filter(({ treatment }) => treatment.length === 0)
    .map((group): UntreatedShare => {
      const courses = coursesOf(group);
      const byDay = commonAge(courses);
      return {
        winter: winterOf(group.batches[0]!.conditions.dayZero, lot.zone), lot, group, byDay,
        pooled: poolOf(courses.map(course => until(course, byDay))), open: openSeeds([courses])[0]!,
      };
    }));
  return shares.sort((a, b) => (a.winter < b.winter ? -1 : a.winter > b.winter ? 1 : 0));
}
