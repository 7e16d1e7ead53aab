/** Lots in which the soak does nothing, and something else goes on: weak seedlings, dishes that differ. */
import { NO_BAR, type Cell } from '../cell.ts';
import { weakKinds } from '../season.ts';
import { cellOf } from './kinds.ts';

export const weakSeedlings: readonly Cell[] = [
  ...weakKinds.flatMap(kind => [0.1, 0.2, 0.3].map(share => (
    cellOf(`weak seedlings, ${100 * share} % ${kind}, 50 of 80 %`, { dishes: [50], untreated: { share: 0.8, weak: { share, kind } } })))),
  cellOf('weak seedlings, 30 % leggy, 24 of 95 %', {
    dishes: [24], untreated: { share: 0.95, weak: { share: 0.3, kind: 'leggy' } } }),
  cellOf('weak seedlings, 30 % leggy, then died, 100 of 80 %', {
    dishes: [100], untreated: { share: 0.8, weak: { share: 0.3, kind: 'leggy, then died' } } }),
];

/** One dish a side cannot tell the soak from the dish: its row is shown as it is. */
function dishesCell(dishes: readonly number[], rho: number, shift: number): Cell {
  const what = [`rho ${rho}`, ...(shift > 0 ? [`${shift} days early or late`] : [])].join(', ');
  const bars = dishes.length === 1 && (rho > 0 || shift > 0) ? NO_BAR : undefined;
  return cellOf(`dishes, ${dishes.length} of ${dishes[0]!} seeds, ${what}`, { dishes, untreated: { rho, shift } }, bars);
}

const DISHES = [[48], [24, 24], [12, 12, 12, 12], [50, 50], [25, 25, 25, 25]] as const;

export const dishes: readonly Cell[] = [
  ...DISHES.flatMap(sizes => [0, 0.05, 0.1].map(rho => dishesCell(sizes, rho, 0))),
  ...DISHES.map(sizes => dishesCell(sizes, 0, 3)),
  dishesCell([12, 12, 12, 12], 0.05, 3),
];
