import { germinatedSteps, type Course } from './course.ts';
import { isUndefined, measured, undefinedBecause, type Measured } from './measured.ts';

/** How much germination came together. Both depend on how closely the checks follow each other. */
export interface Uniformity {
  /**
   * U = -sum f log2 f, f the share of the germinated seed that a check found; bit, 0 when all came in one
   * check. Labouriau & Valadares 1976; Ranal & Santana 2006, Rev Bras Bot 29:1-11 (formula from memory).
   */
  readonly uncertainty: Measured;
  /**
   * Z = sum C(n_i, 2) / C(G, 2): the share of the pairs of germinated seeds that one check found together; 0
   * to 1. Primack 1980, adapted by Ranal & Santana 2006 (formula from memory).
   */
  readonly synchrony: Measured;
}

/**
 * Uncertainty and synchrony of a course.
 *
 * @example
 * uniformity({ sown: 9, checks: [{ day: 4, germinated: 2 }, { day: 6, germinated: 4 }] })
 * // { uncertainty: { value: 1 }, synchrony: { value: 0.333... } }
 */
export function uniformity(course: Course): Uniformity {
  const steps = germinatedSteps(course);
  if (isUndefined(steps)) return { uncertainty: steps, synchrony: steps };
  const found = steps.map(step => step.fresh).filter(fresh => fresh > 0);
  const seeds = found.reduce((sum, n) => sum + n, 0);
  // Twice as many, on both sides of the fraction.
  const pairs = (n: number): number => n * (n - 1);
  return {
    uncertainty: measured(found.reduce((sum, n) => sum + (n / seeds) * Math.log2(seeds / n), 0)),
    synchrony: seeds < 2
      ? undefinedBecause('a single seed germinated')
      : measured(found.reduce((sum, n) => sum + pairs(n), 0) / pairs(seeds)),
  };
}
