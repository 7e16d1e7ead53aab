/** Lots as the cells need them, in few words. */
import type { End, Side, SimulatedLot } from './diary.ts';
import { oneOf, type Random } from './random.ts';
import { scatterOf, type Nature } from './season.ts';

/** Every so many days, from the first look to the last. */
export function every(days: number, first: number, last: number): number[] {
  const looks: number[] = [];
  for (let day = first; day <= last; day += days) looks.push(day);
  return looks;
}

export interface Looks {
  readonly treated: readonly number[];
  readonly untreated: readonly number[];
  /** Left out: each lot is cut open, thrown away or left standing, two times in five, two in five, and one in five. */
  readonly end?: End;
}

export const WEEKLY: Looks = { treated: every(7, 7, 84), untreated: every(7, 7, 84) };

/** The treated and the untreated side have changed places. */
export function swapped({ treated, untreated, end }: Looks): Looks {
  return { treated: untreated, untreated: treated, ...(end && { end }) };
}

export interface TwoSides {
  /** Seeds of each dish, on both sides alike. */
  readonly dishes: readonly number[];
  readonly looks?: Looks;
  readonly untreated: Partial<Nature>;
  /** What is different of the treated seed; nothing where there is no effect. */
  readonly treated?: Partial<Nature>;
  /** Each of them against the untreated side. */
  readonly soaks?: readonly string[];
  readonly id?: string;
}

export const LADDER = ['GA3 250 ppm', 'GA3 500 ppm', 'GA3 1000 ppm'];

const NATURE: Nature = { share: 0.5, median: 24 };

export function lotOf(random: Random, lot: TwoSides): SimulatedLot {
  const { dishes, looks = WEEKLY, untreated, treated = {}, soaks = ['GA3 500 ppm'], id = 'SIM-26' } = lot;
  const end = looks.end ?? oneOf<End>(random, ['cut', 'cut', 'discard', 'discard', 'open']);
  const base = { ...NATURE, ...untreated };
  const sides: Side[] = [
    ...soaks.map(soak => ({ soak, dishes, nature: { ...base, ...treated }, looks: looks.treated, end })),
    { soak: 'water', dishes, nature: base, looks: looks.untreated, end },
  ];
  return { id, sides, scatter: scatterOf(random) };
}
