import { describe, expect, it } from 'vitest';
import { atomicWeights } from '../../server/src/solutions/atomic-weights.ts';
import { toNumber } from '../../server/src/solutions/display.ts';

// CIAAW, "Standard Atomic Weights 2021", the table on ciaaw.org: an interval, or a value with many digits.
const full: Readonly<Record<string, number | readonly [number, number]>> = {
  H: [1.00784, 1.00811],
  C: [12.0096, 12.0116],
  N: [14.00643, 14.00728],
  O: [15.99903, 15.99977],
  Na: 22.98976928,
  P: 30.973761998,
  S: [32.059, 32.076],
  Cl: [35.446, 35.457],
  K: 39.0983,
};

describe('a standard atomic weight', () => {
  it.each(Object.entries(full))('of %s agrees with the table that it abridges', (symbol, value) => {
    const weight = toNumber(atomicWeights.get(symbol)!);
    if (typeof value === 'number') {
      expect(weight).toBe(Number(value.toPrecision(5)));
    } else {
      // Half of the last digit that the abridged table gives.
      expect(weight).toBeGreaterThanOrEqual(value[0] - 0.0005);
      expect(weight).toBeLessThanOrEqual(value[1] + 0.0005);
    }
  });

  it('is known of no element that the full table was not compared for', () => {
    expect([...atomicWeights.keys()].sort()).toEqual(Object.keys(full).sort());
  });
});
