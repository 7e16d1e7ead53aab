import type { Contrast } from './contrast.ts';
import type { Difference } from './difference.ts';
import { undefinedBecause, type Undefined } from './measured.ts';

export type Apart = Pick<Contrast, 'treated' | 'untreated' | 'difference'>;

/**
 * The difference over the lots, each weighted by n1 n2 / (n1 + n2) as Mantel & Haenszel do, with the limits of each lot
 * put together: square and add (Zou & Donner 2008, Stat Med 27:1693-1702, from memory).
 */
export function differenceOver(contrasts: readonly Apart[]): Difference | Undefined {
  if (contrasts.length === 0) return undefinedBecause('no lot has treated and untreated seed that was counted');
  const lots = contrasts.map(({ treated, untreated, difference }) => (
    { weight: (treated.n * untreated.n) / (treated.n + untreated.n), ...difference }));
  const all = lots.reduce((sum, { weight }) => sum + weight, 0);
  const value = lots.reduce((sum, lot) => sum + (lot.weight / all) * lot.value, 0);
  const width = (of: (lot: Difference) => number) => Math.hypot(...lots.map(lot => (lot.weight / all) * of(lot)));
  return {
    value,
    low: Math.max(-1, value - width(lot => lot.value - lot.low)),
    high: Math.min(1, value + width(lot => lot.high - lot.value)),
  };
}
