/**
 * Standard atomic weights of the elements in our agents: the table abridged to five significant digits,
 * with the conventional values where the weight is an interval. IUPAC/CIAAW "Standard atomic weights 2021"
 * (Prohaska et al. 2022, Pure Appl Chem 94:573-600; the abridged column from memory, checked in the tests
 * against the full table).
 */
import { type Exact, exact } from './amounts.ts';

/** g/mol */
export const atomicWeights: ReadonlyMap<string, Exact> = new Map([
  ['C', exact(12.011)],
  ['H', exact(1.008)],
  ['N', exact(14.007)],
  ['O', exact(15.999)],
  ['Na', exact(22.99)],
  ['P', exact(30.974)],
  ['S', exact(32.06)],
  ['Cl', exact(35.45)],
  ['K', exact(39.098)],
]);
