/** The arithmetic of counts: what is new, what is a total, what a later stage implies. */
import type { CountFact } from '../model/record.ts';
import type { Totals } from './life.ts';

/**
 * Totals after a count. A number without `=` is added, one with `=` replaces. A seed that emerged has germinated and
 * one with a leaf has emerged, so the earlier stages are raised to the later ones where they lag behind.
 *
 * Example: 3 germinated so far, then `2 emerged` leaves 3 germinated; then `2 emerged` again makes 4 of both
 */
export function countTotals(before: Totals, counts: readonly CountFact[]): Totals {
  // Most checks find nothing new, and thousands of equal totals take room.
  if (counts.every(({ what, n, total }) => n.value === (total ? before[what] : 0))) return before;
  const totals = { ...before };
  for (const { what, n, total } of counts) totals[what] = total ? n.value : totals[what] + n.value;
  totals.emerged = Math.max(totals.emerged, totals.leaf);
  totals.germinated = Math.max(totals.germinated, totals.emerged);
  return totals;
}
