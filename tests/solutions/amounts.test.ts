import fc from 'fast-check';
import { divide, type Unit, unit as unitOf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { MassUnit, VolumeUnit } from '../../server/src/model/quantity.ts';
import {
  dissolvedMg,
  exact,
  massInMg,
  mgPer,
  mlPer,
  strengthOf,
  volumeHolding,
  volumeInMl,
} from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';

const massUnits = ['kg', 'g', 'mg', 'ug'] as const satisfies readonly MassUnit[];
const volumeUnits = ['L', 'mL', 'uL'] as const satisfies readonly VolumeUnit[];
const amount = fc.double({ min: 1e-9, max: 1e9, noNaN: true });

describe('an exact amount', () => {
  it('is the decimal that was written, not its binary neighbour', () => {
    expect(exact(0.1).toFraction()).toBe('1/10');
    expect(exact(1e-7).toFraction()).toBe('1/10000000');
    expect(exact(2.5e21).toFraction()).toBe('2500000000000000000000');
    expect(exact(0.1).add(exact(0.2)).equals(exact(0.3))).toBe(true);
  });

  it('is refused for what is no number', () => {
    expect(() => exact(Number.NaN)).toThrow(RangeError);
    expect(() => exact(Infinity)).toThrow(RangeError);
  });

  it('adds decimals as pencil and paper do', () => {
    const decimal = fc.record({ digits: fc.integer({ min: 0, max: 999_999 }), places: fc.integer({ min: 0, max: 6 }) });
    fc.assert(fc.property(fc.array(decimal, { maxLength: 40 }), (decimals) => {
      const sum = decimals
        .map(({ digits, places }) => exact(Number(`${digits}e-${places}`)))
        .reduce((a, b) => a.add(b), exact(0));
      // In whole millionths there is nothing to round.
      const millionths = decimals.reduce(
        (total, { digits, places }) => total + BigInt(digits) * 10n ** BigInt(6 - places),
        0n,
      );
      expect(sum.mul(1e6).toFraction()).toBe(String(millionths));
    }));
  });

  it('comes back as the number it was made of', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
      expect(toNumber(exact(x))).toBe(x === 0 ? 0 : x);
    }));
  });
});

describe('a conversion of units', () => {
  it('agrees with a general library of units on masses', () => {
    fc.assert(fc.property(amount, fc.constantFrom(...massUnits), (value, unit) => {
      const second = unitOf(value, unit).toNumber('mg');
      expect(toNumber(massInMg({ value, unit })) / second).toBeCloseTo(1, 12);
    }));
  });

  it('agrees with a general library of units on volumes', () => {
    fc.assert(fc.property(amount, fc.constantFrom(...volumeUnits), (value, unit) => {
      const second = unitOf(value, unit).toNumber('mL');
      expect(toNumber(volumeInMl({ value, unit })) / second).toBeCloseTo(1, 12);
    }));
  });

  it('loses nothing on the way there and back', () => {
    fc.assert(fc.property(amount, fc.constantFrom(...massUnits), (value, unit) => {
      expect(toNumber(massInMg({ value, unit }).div(mgPer[unit]))).toBe(value);
    }));
    fc.assert(fc.property(amount, fc.constantFrom(...volumeUnits), (value, unit) => {
      expect(toNumber(volumeInMl({ value, unit }).div(mlPer[unit]))).toBe(value);
    }));
  });
});

describe('mass, volume and strength', () => {
  it('belong together: 10 mg in 10 mL is 1000 mg/L (common practice)', () => {
    expect(strengthOf(exact(10), exact(10)).equals(1000)).toBe(true);
    expect(dissolvedMg(exact(1000), exact(10)).equals(10)).toBe(true);
    expect(volumeHolding(exact(10), exact(1000)).equals(10)).toBe(true);
  });

  it('agree with a general library of units', () => {
    fc.assert(fc.property(amount, amount, (mg, ml) => {
      const second = divide(unitOf(mg, 'mg'), unitOf(ml, 'mL')) as Unit;
      expect(toNumber(strengthOf(exact(mg), exact(ml))) / second.toNumber('mg/L')).toBeCloseTo(1, 12);
    }));
  });
});
