/** Trials as a plan foresees them: the verdict must find them as often as the plan says. */
import { power } from '../../../server/src/measures/power.ts';
import type { Cell } from '../cell.ts';
import { diaryOf, textOf } from '../diary.ts';
import { journalOf, verdictsOfLots } from '../judged.ts';
import { every, lotOf, type Looks } from '../lots.ts';

interface Planned {
  readonly dishes: readonly number[];
  /** True shares of the untreated and the treated seed. */
  readonly shares: readonly [number, number];
  readonly rho?: number;
  /** One of them does something. */
  readonly soaks?: readonly string[];
}

/** The days of a plan are those of a season that nobody cut short. */
const LONG: Looks = { treated: every(7, 7, 126), untreated: every(7, 7, 126), end: 'discard' };

/** How far a plan may be off beside chance: it leaves the days to the normal curve. */
const ROUGH = 0.01;

const UNLIKE = ['GA3 500 ppm', 'KNO3 0.2 %', 'smoke 10 %'];

function planCell({ dishes, shares: [untreated, treated], rho = 0, soaks = ['GA3 500 ppm'] }: Planned): Cell {
  const n = dishes.reduce((sum, seeds) => sum + seeds, 0);
  const wanted = power({
    treated: n, untreated: n, dishes: { treated: dishes.length, untreated: dishes.length }, treatments: soaks.length,
      rho,
  }, treated, untreated);
  const words = [
    `plan, ${dishes.length} of ${dishes[0]!}`, `${100 * untreated} to ${100 * treated} %`,
    ...rho > 0 ? [`rho ${rho}`] : [], ...soaks.length > 1 ? [`one of ${soaks.length} treatments`] : [],
  ];
  return {
    name: `${words.join(', ')}: ${Math.round(100 * wanted)} %`,
    bars: { most: { worth: wanted + ROUGH }, least: { worth: wanted - ROUGH } },
    judge: random => {
      const lot = lotOf(random, { dishes, looks: LONG, soaks, untreated: { share: untreated, rho }, treated: {
        share: treated } });
      const sides = lot.sides.map((side, i) => (
        i > 0 && i < soaks.length ? { ...side, nature: { ...side.nature, share: untreated } } : side));
      return verdictsOfLots(journalOf(textOf(diaryOf(random, { ...lot, sides })))).slice(0, 1);
    },
  };
}

const FOUR_OF_12 = [12, 12, 12, 12];

export const plans: readonly Cell[] = [
  { dishes: [12], shares: [0.1, 0.6] as const },
  { dishes: [24], shares: [0.2, 0.5] as const },
  { dishes: [24], shares: [0.2, 0.7] as const },
  { dishes: [50], shares: [0.2, 0.4] as const },
  { dishes: [50], shares: [0.6, 0.85] as const },
  { dishes: FOUR_OF_12, shares: [0.2, 0.5] as const },
  { dishes: FOUR_OF_12, shares: [0.2, 0.5] as const, rho: 0.05 },
  { dishes: [24, 24], shares: [0.2, 0.6] as const, rho: 0.05 },
  { dishes: [25, 25, 25, 25], shares: [0.4, 0.6] as const, rho: 0.05 },
  { dishes: FOUR_OF_12, shares: [0.2, 0.6] as const, rho: 0.1 },
  { dishes: [24], shares: [0.2, 0.6] as const, soaks: UNLIKE },
].map(planCell);
