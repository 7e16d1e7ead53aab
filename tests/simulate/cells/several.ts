/** Several treatments of a lot, and several lots of a species; no effect, unless it is said. */
import type { Cell } from '../cell.ts';
import { LADDER } from '../lots.ts';
import { between, oneOf } from '../random.ts';
import { cellOf, speciesCell } from './kinds.ts';

const UNLIKE = ['GA3 500 ppm', 'KNO3 0.2 %', 'smoke 10 %'];
const seedsAndShares = [[24, 0.2], [24, 0.5], [50, 0.5], [50, 0.8]] as const;

export const several: readonly Cell[] = [
  ...seedsAndShares.flatMap(([n, share]) => [
    cellOf(`three doses, ${n} of ${100 * share} %`, { dishes: [n], soaks: LADDER, untreated: { share } }),
    cellOf(`three unlike treatments, ${n} of ${100 * share} %`, { dishes: [n], soaks: UNLIKE, untreated: { share } }),
  ]),
  cellOf('three doses, 20 % leggy, 50 of 80 %', {
    dishes: [50], soaks: LADDER, untreated: { share: 0.8, weak: { share: 0.2, kind: 'leggy' } } }),
  ...seedsAndShares.map(([n, share]) => (
    speciesCell(`five lots, ${n} of ${100 * share} %`, 5, () => ({ dishes: [n], untreated: { share } })))),
  speciesCell('five lots, each with its share and its speed', 5, random => ({
    dishes: [oneOf(random, [12, 24, 50])],
    untreated: { share: between(random, 0.1, 0.95), median: between(random, 10, 40) } })),
  speciesCell('five lots, 20 % leggy, 24 of 80 %', 5, () => ({
    dishes: [24], untreated: { share: 0.8, weak: { share: 0.2, kind: 'leggy' } } })),
  speciesCell('one lot of a species, three doses, 24 of 50 %', 1, () => ({ dishes: [24], soaks: LADDER, untreated: {} })),
  speciesCell('five lots, three doses, 24 of 50 %', 5, () => ({ dishes: [24], soaks: LADDER, untreated: {} })),
];
