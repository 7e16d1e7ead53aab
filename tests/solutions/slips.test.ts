import { describe, expect, it } from 'vitest';
import type { StrengthUnit } from '../../server/src/model/quantity.ts';
import { type Slip, unitSlip } from '../../server/src/solutions/slips.ts';
import { agent } from './helpers.ts';

function slip(word: string, value: number, unit: StrengthUnit): Slip | undefined {
  return unitSlip({ value, unit }, agent(word));
}

describe('a slip of the unit', () => {
  it.each([
    ['GA3', 500, '%', 'ppm'],
    ['GA3', 0.5, 'ppm', 'g/L'],
    ['GA3', 500, 'g/L', 'mg/L'],
    ['GA3', 500, 'mM', 'uM'],
    ['GA3', 1.44, 'uM', 'mM'],
    ['KNO3', 0.2, 'ppm', '%'],
    ['bleach', 0.5, 'ppm', '%'],
  ] as const)('is seen in %s %s %s, and %s is the likely unit', (word, value, unit, meant) => {
    expect(slip(word, value, unit)?.readings[0]).toEqual({ value, unit: meant });
  });

  it('is told with the direction and what is usual', () => {
    expect(slip('GA3', 500, '%')).toMatchObject({ tooStrong: true, usual: '5 to 5000 ppm' });
    expect(slip('KNO3', 0.2, 'ppm')).toMatchObject({ tooStrong: false, usual: '0.01 to 5 %' });
  });

  // In ppm, as the hover of each agent tells them: common practice, no source.
  it.each([
    ['GA3', 5, 5000], ['GA3K', 5, 5000], ['GA4+7', 1, 5000], ['KNO3', 100, 50_000], ['ethephon', 1, 5000],
    ['smoke', 100, 1_000_000], ['peroxide', 300, 100_000], ['bleach', 100, 60_000], ['thiourea', 100, 50_000],
    ['kinetin', 0.1, 1000], ['BA', 0.1, 1000],
  ])('begins where %s is below %s and above %s ppm', (word, low, high) => {
    const seen = [low * 0.999, low, high, high * 1.000001].map(value => slip(word, value, 'ppm')?.tooStrong);
    expect(seen).toEqual([false, undefined, undefined, true]);
  });

  it('may have no likely reading', () => {
    expect(slip('GA3', 1_000_000, 'ppm')).toMatchObject({ tooStrong: true, readings: [] });
  });

  // Doses of published treatments (abstracts read): 10 mg/L to 3000 mg/L and 0.1 to 10 mmol/L of GA3.
  it.each([
    ['GA3', 10, 'mg/L'], ['GA3', 3000, 'mg/L'], ['GA3', 0.1, 'mM'], ['GA3', 10, 'mM'], ['GA3', 720, 'uM'],
    ['KNO3', 0.2, '%'], ['KNO3', 500, 'mg/L'], ['kinetin', 10, 'mg/L'], ['peroxide', 3, '%'], ['bleach', 0.5, '%'],
    ['smoke', 10, '%'], ['thiourea', 3, '%'],
  ] as const)('is not suspected in %s %s %s', (word, value, unit) => {
    expect(slip(word, value, unit)).toBeUndefined();
  });

  it('is not suspected where nothing is known of the agent, or nothing of the dose', () => {
    expect(slip('water', 5, 'ppm')).toBeUndefined();
    expect(slip('smoke', 5, 'mM')).toBeUndefined();
    expect(slip('GA3', 0, 'ppm')).toBeUndefined();
  });
});
