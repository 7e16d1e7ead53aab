import { describe, expect, test } from 'vitest';
import { meanTime } from '../../server/src/measures/mean-time.ts';
import { course, COURSES, expectClose, valueOf } from './helpers.ts';

const { D1, D2, D3, D4, D5 } = COURSES;

// Worked out as exact fractions from the formulas, apart from this code.
describe('the mean time to germination', () => {
  test.each([
    ['D1', D1, 7.15, 811 / 380, 20.432080312], ['D2', D2, 10.125, 987 / 62, 39.406485139],
    ['D4', D4, 6, 0, 0], ['D5', D5, 22 / 3, 112 / 17, 35.001215341],
  ] as const)('has variance and derived rates: %s', (_, of, mean, variance, cv) => {
    const found = meanTime(of);
    expectClose(valueOf(found.mean), mean);
    expectClose(valueOf(found.variance), variance);
    expectClose(valueOf(found.standardDeviation), Math.sqrt(variance));
    expect(valueOf(found.coefficientOfVariation)).toBeCloseTo(cv, 9);
    expectClose(valueOf(found.rate), 1 / mean);
    expectClose(valueOf(found.velocity), 100 / mean);
  });

  test('has no variance with a single seed', () => {
    expect(valueOf(meanTime(D3).mean)).toBe(9);
    expect(meanTime(D3).variance).toEqual({ undefined: 'a single seed germinated' });
    expect(meanTime(D3).coefficientOfVariation).toEqual({ undefined: 'a single seed germinated' });
  });

  test('lies above the mean of the checks before: 226 / 32 for D2', () => {
    expectClose(valueOf(meanTime(D2).earliest), 226 / 32);
  });

  test('has no lower bound for seed that was up at the first check, before day 0', () => {
    const found = meanTime(course(10, '-4:4 6:4'));
    expect(valueOf(found.mean)).toBe(1);
    expect(found.earliest).toEqual({ undefined: 'no check before the first germination' });
  });

  test('has no rate when it is not after day 0', () => {
    const found = meanTime(course(10, '-4:4 2:4', [-9]));
    expect(valueOf(found.mean)).toBe(-1);
    expect(valueOf(found.earliest)).toBe(-6.5);
    expect(found.rate).toEqual({ undefined: 'the mean is not after day 0' });
    expect(found.velocity).toEqual(found.rate);
    expect(found.coefficientOfVariation).toEqual(found.rate);
  });

  test('is undefined in all its parts when nothing germinated', () => {
    for (const part of Object.values(meanTime(course(10, '', [5])))) expect(part).toEqual({ undefined: 'nothing germinated' });
  });
});
