/** Molar masses from formulas. */
import { type Exact, exact } from './amounts.ts';
import { atomicWeights } from './atomic-weights.ts';

/**
 * Molar mass (g/mol) of a formula of symbols and counts, such as C19H22O6.
 *
 * @throws RangeError when the text is no such formula or an element is not in the table
 */
export function molarMass(formula: string): Exact {
  const parts = /^(?:[A-Z][a-z]?(?:[1-9]\d*)?)+$/.test(formula) ? formula.match(/[A-Z][a-z]?\d*/g) ?? [] : [];
  if (parts.length === 0) throw new RangeError(`no formula: ${formula}`);
  let sum = exact(0);
  for (const part of parts) {
    const symbol = part.replace(/\d+$/, '');
    const weight = atomicWeights.get(symbol);
    if (weight === undefined) throw new RangeError(`no atomic weight of ${symbol} in ${formula}`);
    sum = sum.add(weight.mul(Number(part.slice(symbol.length) || 1)));
  }
  return sum;
}
