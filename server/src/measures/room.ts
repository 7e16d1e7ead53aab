import type { Comparison } from './comparison.ts';
import type { Room } from './evidence.ts';
import { holm } from './holm.ts';

/**
 * The room that treatments beside one untreated part leave each other: all of them together may be wrong no more often
 * than one alone. Holm's correction of the claims' p-values, each way for itself.
 */
export function roomsOf(comparisons: readonly Comparison[]): ReadonlyMap<Comparison, Room> {
  const factors = (way: 'better' | 'worse'): readonly number[] => {
    const ps = comparisons.map(comparison => comparison[way].p);
    return holm(ps).map((adjusted, i) => (ps[i]! > 0 ? Math.max(1, adjusted / ps[i]!) : comparisons.length));
  };
  const [better, worse] = [factors('better'), factors('worse')];
  return new Map(comparisons.map((comparison, i) => (
    [comparison, { better: better[i]!, worse: worse[i]!, treatments: comparisons.length }])));
}
