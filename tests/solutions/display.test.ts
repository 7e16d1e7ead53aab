import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { apartText, numberText, percentText, showMade, showMass, showStrength, showVolume, toNumber } from '../../server/src/solutions/display.ts';

describe('a number shown', () => {
  it.each([
    [exact(0.1).add(exact(0.2)), '0.3', true],
    [exact(62.5), '62.5', true],
    [exact(346.379), '346.379', true],
    [exact(12.345), '12.345', true],
    [exact(1000).div(18), '55.56', false],
    [exact(2).div(3), '0.6667', false],
    [exact(1).div(3000), '0.0003333', false],
    [exact(123_456_789), '123456789', true],
    [exact(1_234_567).add(exact(0.5)), '1234568', false],
    [exact(-2).div(3), '-0.6667', false],
    [exact(0), '0', true],
    [exact(1e20), '1.000e+20', false],
    [exact(1e15), '1.000e+15', false],
    [exact(1e15).sub(1), '999999999999999', true],
    [exact(1e-9), '0.000000001', true],
    [exact(1.5e-12), '1.500e-12', false],
    [exact(9.99999).add(exact(1e-9)), '10', false],
  ])('is short and right: %s', (x, text, isExact) => {
    expect(numberText(x)).toEqual({ text, exact: isExact });
  });

  it('never has a tail of binary digits', () => {
    const hundredths = fc.integer({ min: 0, max: 9999 }).map(n => n / 100);
    fc.assert(fc.property(hundredths, hundredths, (a, b) => {
      const { text, exact: isExact } = numberText(exact(a).add(exact(b)));
      expect(isExact).toBe(true);
      expect(text).toMatch(/^\d+(\.\d\d?)?$/);
      expect(Math.round(Number(text) * 100)).toBe(Math.round(a * 100) + Math.round(b * 100));
    }));
  });

  it('is within half a unit of its fourth digit', () => {
    fc.assert(fc.property(fc.double({ min: 1e-12, max: 1e14, noNaN: true }), (value) => {
      expect(Math.abs(Number(numberText(exact(value)).text) / value - 1)).toBeLessThanOrEqual(5.0001e-4);
    }));
  });
});

describe('the nearest double', () => {
  it('is found where numerator and denominator are too large for doubles', () => {
    const third = exact(1).div(3);
    const huge = exact(3).pow(1000);
    expect(toNumber(third.mul(huge).div(huge))).toBe(1 / 3);
    expect(toNumber(huge.add(1).div(huge))).toBe(1);
  });
});

describe('a strength that was worked out', () => {
  it('has three digits, and all whole ones', () => {
    const shown = [498.96, 997.783, 1023.4, 12.3456, 0.0123456, 500, 0].map(value => showMade(exact(value), 'ppm').text);
    expect(shown).toEqual(['499 ppm', '998 ppm', '1023 ppm', '12.3 ppm', '0.0123 ppm', '500 ppm', '0 ppm']);
    expect([showMade(exact(498.96), 'ppm').exact, showMade(exact(12.3), '%').exact]).toEqual([false, true]);
  });
});

describe('two numbers shown beside each other', () => {
  it('have the digits that tell them apart', () => {
    expect(apartText(exact(1000.001), exact(1000))).toEqual(['1000.001', '1000']);
    expect(apartText(exact(2).div(3), exact(0.5))).toEqual(['0.6667', '0.5']);
    expect(apartText(exact(1000), exact(1000))).toEqual(['1000', '1000']);
    expect(apartText(exact(2).div(3), exact(2).div(3).add(exact(1e-9)))).toEqual(['0.666666667', '0.666666668']);
  });
});

describe('an amount shown', () => {
  it.each([
    [showMass(exact(0.05)), '50 µg'],
    [showMass(exact(0.5)), '0.5 mg'],
    [showMass(exact(999)), '999 mg'],
    [showMass(exact(1500)), '1.5 g'],
    [showMass(exact(2_500_000)), '2.5 kg'],
    [showMass(exact(0)), '0 mg'],
    [showVolume(exact(62.5)), '62.5 mL'],
    [showVolume(exact(0.5)), '0.5 mL'],
    [showVolume(exact(0.5), true), '500 µL'],
    [showVolume(exact(0.05)), '50 µL'],
    [showVolume(exact(1000)), '1 L'],
    [showVolume(exact(0), true), '0 mL'],
    [showStrength(exact(0.05), '%'), '0.05 %'],
    [showStrength(exact(250), 'uM'), '250 µM'],
  ])('is in the unit that a person reads: %#', ({ text }, wanted) => {
    expect(text).toBe(wanted);
  });

  it('keeps the full number beside the rounded text', () => {
    expect(showMass(exact(1000).div(18))).toEqual({ value: 55.55555555555556, unit: 'mg', text: '55.56 mg', exact: false });
  });

  it('tells a share in percent', () => {
    expect(percentText(exact(1).div(3))).toBe('33.3 %');
    expect(percentText(exact(0.008))).toBe('0.8 %');
  });
});
