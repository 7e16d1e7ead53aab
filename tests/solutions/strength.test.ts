import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StrengthUnit } from '../../server/src/model/quantity.ts';
import { exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import {
  acidEquivalent,
  availableChlorine,
  convertStrength,
  strengthFromPpm,
  strengthInPpm,
} from '../../server/src/solutions/strength.ts';
import { agent, codeOf, from, ppm, valueOf } from './helpers.ts';

const units = ['ppm', 'mg/L', 'g/L', '%', 'mM', 'uM'] as const satisfies readonly StrengthUnit[];
const substances = ['GA3', 'GA3K', 'GA4+7', 'KNO3', 'ethephon', 'peroxide', 'bleach', 'thiourea', 'kinetin', 'BA'] as const;

describe('a strength in another unit', () => {
  // Check values computed by rational arithmetic.
  it.each([
    [100, 0.288701, 0.01],
    [200, 0.577402, 0.02],
    [250, 0.721753, 0.025],
    [500, 1.443506, 0.05],
    [800, 2.309609, 0.08],
    [1000, 2.887011, 0.1],
    [1500, 4.330517, 0.15],
    [2000, 5.774022, 0.2],
    [3000, 8.661033, 0.3],
    [5000, 14.435055, 0.5],
  ])('of GA3: %s mg/L is %s mM and %s %%', (mgPerL, millimolar, percent) => {
    expect(from(exact(mgPerL), 'mM', 'GA3')).toBeCloseTo(millimolar, 6);
    expect(from(exact(mgPerL), '%', 'GA3')).toBe(percent);
    expect(from(exact(mgPerL), 'g/L', 'GA3')).toBe(mgPerL / 1000);
  });

  // Check values computed by rational arithmetic.
  it.each([
    [720, 'uM', 249.393],
    [100, 'uM', 34.638],
    [0.1, 'mM', 34.638],
    [1, 'mM', 346.379],
    [10, 'mM', 3463.79],
  ] as const)('of GA3: %s %s is %s mg/L', (value, unit, mgPerL) => {
    expect(ppm({ value, unit }, 'GA3')).toBeCloseTo(mgPerL, 3);
  });

  // Check values computed by rational arithmetic.
  it.each([
    ['KNO3', 0.2, 2000, 19.782002],
    ['peroxide', 3, 30_000, 881.99],
    ['thiourea', 3, 30_000, 394.13],
    ['bleach', 0.5, 5000, 67.169],
  ])('of %s: %s %% is %s mg/L and %s mM', (word, value, mgPerL, millimolar) => {
    expect(ppm({ value, unit: '%' }, word)).toBe(mgPerL);
    expect(from(exact(mgPerL), 'mM', word)).toBeCloseTo(millimolar, word === 'KNO3' ? 6 : 2);
  });

  it('of KNO3 0.2 % is 2 g in 1 L (an agriculture-extension page restating the international rules)', () => {
    expect(ppm({ value: 0.2, unit: '%' }, 'KNO3')).toBe(ppm({ value: 2, unit: 'g/L' }, 'KNO3'));
  });

  it('of GA3 500 ppm is 500 mg in 1 L (the same page)', () => {
    expect(ppm({ value: 500, unit: 'ppm' }, 'GA3')).toBe(ppm({ value: 500, unit: 'mg/L' }, 'GA3'));
  });

  it('loses nothing on the way there and back', () => {
    const value = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(fc.property(value, fc.constantFrom(...units), fc.constantFrom(...units), fc.constantFrom(...substances),
      (number, one, other, word) => {
        const there = valueOf(convertStrength({ value: number, unit: one }, other, agent(word))).value;
        const ppmThere = valueOf(strengthFromPpm(exact(1), other, agent(word))).inverse().mul(there);
        expect(toNumber(valueOf(strengthFromPpm(ppmThere, one, agent(word))))).toBe(number);
      }));
  });

  it('says what it takes for granted, and only that', () => {
    const ids = (unit: StrengthUnit, to: StrengthUnit, word: string): string[] =>
      valueOf(convertStrength({ value: 1, unit }, to, agent(word))).assumptions.map(({ id }) => id);
    expect(ids('ppm', 'ppm', 'GA3')).toEqual([]);
    expect(ids('mg/L', 'g/L', 'GA3')).toEqual([]);
    expect(ids('ppm', 'mg/L', 'GA3')).toEqual(['ppm-is-mg-per-l']);
    expect(ids('ppm', '%', 'GA3')).toEqual(['ppm-is-mg-per-l', 'percent-weight-in-volume']);
    expect(ids('mM', 'uM', 'GA3')).toEqual([]);
    expect(ids('mg/L', 'mM', 'GA4+7')).toEqual(['molar-mass']);
    expect(ids('%', 'g/L', 'peroxide')).toEqual(['peroxide-percent']);
    expect(ids('%', 'g/L', 'bleach')).toEqual(['percent-weight-in-volume', 'bleach-as-naocl']);
    expect(ids('mg/L', 'mM', 'GA3K')).toEqual(['molar-mass', 'as-salt']);
    expect(ids('ppm', '%', 'smoke')).toEqual(['percent-by-volume']);
  });

  it('of the two gibberellins is off by less than it says, whatever the mixture', () => {
    const mean = valueOf(convertStrength({ value: 1, unit: 'mM' }, 'mg/L', agent('GA4+7')));
    expect(mean.assumptions[0]?.text).toContain('less than 0.4 %');
    for (const pure of [332.396, 330.38]) expect(Math.abs(toNumber(mean.value) / pure - 1)).toBeLessThan(0.004);
  });

  it('is refused where there is none', () => {
    expect(codeOf(strengthInPpm('unmeasured', agent('GA3')))).toBe('unmeasured');
    expect(codeOf(convertStrength('unmeasured', '%', agent('GA3')))).toBe('unmeasured');
    expect(codeOf(strengthInPpm({ value: 5, unit: 'ppm' }, agent('water')))).toBe('no-strength');
    expect(codeOf(strengthInPpm({ value: 5, unit: 'g/L' }, agent('smoke')))).toBe('by-volume');
    expect(codeOf(convertStrength({ value: 5, unit: '%' }, 'mM', agent('smoke')))).toBe('by-volume');
    const nameless = { ...agent('GA3'), molarMass: undefined };
    expect(codeOf(strengthInPpm({ value: 5, unit: 'mM' }, nameless))).toBe('no-molar-mass');
  });
});

describe('a salt and its acid', () => {
  it('stand in the ratio of their molar masses: 750 mg/L of the potassium salt is 675.696 mg/L of GA3', () => {
    // Check value computed by rational arithmetic.
    expect(toNumber(acidEquivalent(exact(750), agent('GA3K'))!)).toBeCloseTo(675.696, 3);
    expect(acidEquivalent(exact(750), agent('GA3'))).toBeUndefined();
  });
});

describe('bleach', () => {
  it('holds available chlorine in the ratio of Cl2 to NaOCl', () => {
    // Check value computed by rational arithmetic: 5000 x 70.90 / 74.439.
    expect(toNumber(availableChlorine(exact(5000)))).toBeCloseTo(4762.2886, 4);
  });
});
