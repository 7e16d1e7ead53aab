/** Strengths as limits: those of powder that was halved by eye are estimates, and so is all that is made from it. */
import { halvedOrigin, shelfOf } from '../journal/doses.ts';
import type { Journal } from '../journal/journal.ts';
import type { Dose } from '../journal/life.ts';
import type { Solution } from '../journal/solutions.ts';
import { toNumber } from '../solutions/display.ts';

/** ppm; both ends are the same where it is known, and neither is known where nothing was measured. */
export interface Strength {
  readonly least: number | undefined;
  readonly most: number | undefined;
}

const unknown: Strength = { least: undefined, most: undefined };

export function strengthOfSolution(solution: Solution, journal: Journal): Strength {
  if (!solution.ppm.ok) return unknown;
  const ppm = toNumber(solution.ppm.value);
  const { low, high } = spreadOf(solution, journal) ?? { low: 1, high: 1 };
  return { least: solution.staleSource === undefined ? ppm * low : 0, most: ppm * high };
}

export function strengthOfDose({ ppm, parts, stale }: Dose, journal: Journal): Strength {
  if (!ppm.ok) return unknown;
  const value = toNumber(ppm.value);
  const found = parts.map(({ stock, ppm: own }) => {
    const solution = stock === undefined ? undefined : journal.solution(stock);
    return { own: own.ok ? toNumber(own.value) : 0, spread: solution && spreadOf(solution, journal) };
  });
  const isEstimate = found.some(({ spread }) => spread !== undefined);
  const end = (which: 'low' | 'high') => (
    isEstimate ? found.reduce((sum, { own, spread }) => sum + own * (spread?.[which] ?? 1), 0) : value);
  // From a bottle past its time it is this strong at most.
  return { least: stale ? 0 : end('low'), most: end('high') };
}

/** The limits of a strength as parts of it; undefined where nothing in its making was halved by eye. */
function spreadOf(solution: Solution, journal: Journal): { readonly low: number; readonly high: number } | undefined {
  const { uncertainty, ppm } = halvedOrigin(solution, shelfOf(journal))?.powder ?? {};
  if (uncertainty?.kind !== 'interval' || !ppm) return undefined;
  const part = (limit: typeof ppm) => toNumber(limit.div(ppm));
  return { low: part(uncertainty.low), high: part(uncertainty.high) };
}
