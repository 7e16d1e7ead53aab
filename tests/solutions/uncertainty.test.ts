import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { dilutedUncertainty, limitsOf, readingError, type Uncertainty } from '../../server/src/solutions/uncertainty.ts';

describe('the error of a reading', () => {
  it.each([
    [20, undefined, 0.025],
    [20, 1, 0.0025],
    [0.5, undefined, 0.1],
    [2.5e-7, undefined, 0.02],
    [3e21, undefined, 0.5 / 3],
    [1, undefined, undefined],
    [2, undefined, undefined],
    [0.02, undefined, undefined],
    [1, 2, 0.005],
    [0, undefined, undefined],
  ])('of %s with %s decimals is %s of it', (value, decimals, error) => {
    const found = readingError({ value, unit: 'mg', decimals });
    if (error === undefined) expect(found).toBeUndefined();
    else expect(toNumber(found!)).toBeCloseTo(error, 12);
  });
});

describe('limits', () => {
  it('take every error at its worst', () => {
    const { low, high } = limitsOf(exact(100), [exact(0.1)], [exact(0.25)]);
    expect(toNumber(low)).toBe(72);
    expect(toNumber(high)).toBeCloseTo(110 / 0.75, 12);
  });

  it('hold every strength that the true factors can give', () => {
    const error = fc.integer({ min: 0, max: 20 }).map(n => n / 100);
    const side = fc.integer({ min: -100, max: 100 }).map(n => n / 100);
    fc.assert(fc.property(error, error, side, side, (factor, divisor, a, b) => {
      const { low, high } = limitsOf(exact(1000), [exact(factor)], [exact(divisor)]);
      const one = exact(1);
      const real = exact(1000)
        .mul(one.add(exact(factor).mul(exact(a))))
        .div(one.add(exact(divisor).mul(exact(b))));
      expect(low.lte(real) && real.lte(high)).toBe(true);
    }));
  });
});

describe('the uncertainty of a dilution', () => {
  const stock: Uncertainty = { kind: 'interval', low: exact(900), high: exact(1100), counted: ['the scale'], notCounted: ['purity'] };

  it('adds the errors of both volumes to those of the stock', () => {
    const found = dilutedUncertainty(stock, { value: 10, unit: 'mL' }, { value: 20, unit: 'mL' });
    if (found.kind === 'none') throw new Error(found.why);
    expect(toNumber(found.low)).toBeCloseTo(900 * 9.5 / 20.5, 9);
    expect(toNumber(found.high)).toBeCloseTo(1100 * 10.5 / 19.5, 9);
    expect(found.counted).toHaveLength(3);
    expect(found.notCounted).toEqual(['purity']);
  });

  it('is none where one of its parts has none', () => {
    const none: Uncertainty = { kind: 'none', why: 'nobody weighed it' };
    expect(dilutedUncertainty(none, { value: 10, unit: 'mL' }, { value: 20, unit: 'mL' })).toBe(none);
    expect(dilutedUncertainty(stock, { value: 1, unit: 'mL' }, { value: 20, unit: 'mL' })).toMatchObject({ kind: 'none' });
    expect(dilutedUncertainty(stock, { value: 10, unit: 'mL' }, { value: 1, unit: 'L' })).toMatchObject({ kind: 'none' });
  });
});
