import { describe, expect, it } from 'vitest';
import { toNumber } from '../../server/src/solutions/display.ts';
import { molarMass } from '../../server/src/solutions/molar-mass.ts';

describe('a molar mass', () => {
  // Check values computed by rational arithmetic from the abridged atomic weights.
  it.each([
    ['C19H22O6', 346.379],
    ['C19H21KO6', 384.469],
    ['C19H24O5', 332.396],
    ['C19H22O5', 330.38],
    ['KNO3', 101.102],
    ['H2O2', 34.014],
    ['NaOCl', 74.439],
    ['CH4N2S', 76.117],
    ['C2H6ClO3P', 144.491],
    ['C10H9N5O', 215.216],
    ['C12H11N5', 225.255],
    ['H2SO4', 98.072],
    ['NaCl', 58.44],
    ['C2H6O', 46.069],
    ['C19H15ClN4', 334.807],
  ])('of %s is %s g/mol', (formula, mass) => {
    expect(toNumber(molarMass(formula))).toBe(mass);
  });

  it('of GA3 rounds to the figure of a supplier’s product data page (346.4, unverified)', () => {
    expect(molarMass('C19H22O6').round(1).toString()).toBe('346.4');
  });

  it.each(['', 'c19', '19H', 'C0', 'C19 H22', 'Ca(NO3)2', 'Xx2'])('is refused for “%s”', (formula) => {
    expect(() => molarMass(formula)).toThrow(RangeError);
  });
});
