/** Days on which somebody had time to look, from the sowing. */
import type { Dish } from './season.ts';
import { poisson, whole, type Random } from './random.ts';

export interface Habit {
  /** Days from one look to the next that is intended. */
  readonly gap: number;
  readonly first: number;
  readonly last: number;
  /** How much of them is missed. */
  readonly missed?: number;
  /** From and to, as over Christmas. */
  readonly away?: readonly [number, number];
}

/** The looks of a habit; one at least. */
export function looksOf(random: Random, { gap, first, last, missed = 0, away }: Habit): number[] {
  const looks: number[] = [];
  for (let day = first; day <= last; day += gap) {
    const isAway = away && day >= away[0] && day <= away[1];
    if (!isAway && random() >= missed) looks.push(day);
  }
  return looks.length > 0 ? looks : [last];
}

/** Whenever it happens: gaps by chance, of so many days in the mean. */
export function looksByChance(random: Random, gap: number, last: number): number[] {
  const looks: number[] = [];
  for (let day = 1 + poisson(random, gap); day <= last; day += 1 + poisson(random, gap - 1)) looks.push(day);
  return looks.length > 0 ? looks : [last];
}

/** Somewhere in the season, two to five weeks. */
export function holiday(random: Random, last: number): [number, number] {
  const from = whole(random, 5, Math.max(6, last - 20));
  return [from, from + whole(random, 14, 35)];
}

/** Goes on until nothing new was found so many times in a row after the first find. */
export function untilQuiet(looks: readonly number[], times: number): (dish: Dish) => number[] {
  return ({ seedlings }) => {
    const kept: number[] = [];
    let [quiet, found] = [0, 0];
    for (const look of looks) {
      kept.push(look);
      const up = seedlings.filter(each => each.up <= look).length;
      quiet = up > found ? 0 : quiet + Number(up > 0);
      found = up;
      if (quiet >= times) break;
    }
    return kept;
  };
}

/** Looks every other day for two weeks once something was found, else every fortnight. */
export function whileComing(last: number, start: number): (dish: Dish) => number[] {
  return ({ seedlings }) => {
    const kept: number[] = [];
    let [found, eager] = [0, 0];
    for (let day = start; day <= last; day += eager > 0 ? 2 : 14) {
      kept.push(day);
      const up = seedlings.filter(each => each.up <= day).length;
      eager = up > found ? 7 : eager - 1;
      found = up;
    }
    return kept;
  };
}

