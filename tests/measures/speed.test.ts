import { describe, expect, test } from 'vitest';
import { germinationValue } from '../../server/src/measures/germination-value.ts';
import { speed } from '../../server/src/measures/speed.ts';
import { uniformity } from '../../server/src/measures/uniformity.ts';
import { course, COURSES, expectClose, known, valueOf } from './helpers.ts';

const { D1, D2, D3, D4, D5 } = COURSES;

// Worked out as exact fractions from the formulas, apart from this code.
describe('speed indices', () => {
  test.each([
    ['D1', D1, 10061 / 3465, 11.614430014, 468, 39, 428, 117],
    ['D2', D2, 379 / 105, 9.023809524, 332.5, 11.875, 1552.5, 604],
    ['D3', D3, 1 / 9, 10 / 9, 20, 5 / 3, 45, 4],
    ['D4', D4, 2, 50 / 3, 200, 200 / 9, 450, 48],
    ['D5', D5, 769 / 280, 13.732142857, 485, 17.321428571, 1970, 390],
  ] as const)('of Maguire and Timson, area and day-weighted: %s', (_, of, maguire, percent, timson, mean, area, weighted) => {
    const found = speed(of);
    expectClose(valueOf(found.maguire), maguire);
    expect(valueOf(found.maguirePercent)).toBeCloseTo(percent, 9);
    expectClose(valueOf(found.timson), timson);
    expect(valueOf(found.timsonMean)).toBeCloseTo(mean, 9);
    expectClose(valueOf(found.area), area);
    expectClose(valueOf(found.dayWeighted), weighted);
  });

  test('reach 1000 on the scale of Timson when all seed is up at each of ten daily checks (Timson 1965)', () => {
    expectClose(valueOf(speed(course(50, '1:50', [2, 3, 4, 5, 6, 7, 8, 9, 10])).timson), 1000);
  });

  test('are undefined when nothing germinated or seed was up by day 0', () => {
    for (const index of Object.values(speed(course(10, '', [5])))) expect(index).toEqual({ undefined: 'nothing germinated' });
    for (const index of Object.values(speed(course(10, '0:2 5:3')))) expect(index).toEqual({ undefined: 'seed had germinated by day 0' });
  });

  test('do not mind empty checks by day 0', () => {
    const plain = course(10, '5:3', [9]);
    const checked = course(10, '5:3', [-6, 0, 9]);
    expect(speed(checked)).toEqual(speed(plain));
    expect(germinationValue(checked)).toEqual(germinationValue(plain));
  });

  test('take lost seed out of the percentages', () => {
    expectClose(valueOf(speed(course(10, '5:4', [], { lost: 2 })).maguirePercent), 10);
  });
});

describe('the germination value', () => {
  test.each([
    ['D1', D1, 8.5, 8, 20 / 3, 56.666666667, 80 / 11, 61.818181818],
    ['D2', D2, 6, 10, 20 / 7, 17.142857143, 80 / 21, 22.857142857],
    ['D3', D3, 10 / 9, 9, 5 / 6, 0.925925926, 10 / 9, 1.234567901],
    ['D4', D4, 50 / 3, 6, 100 / 9, 185.185185185, 50 / 3, 277.777777778],
    ['D5', D5, 8.75, 8, 45 / 14, 28.125, 45 / 7, 56.25],
  ] as const)('has a peak and two denominators: %s', (_, of, peak, day, daily, value, dailyLast, valueLast) => {
    const found = known(germinationValue(of));
    expectClose(found.peak.value, peak);
    expect(found.peak.day).toBe(day);
    expectClose(found.toLastCheck.daily, daily);
    expect(found.toLastCheck.value).toBeCloseTo(value, 9);
    expectClose(found.toLastGermination.daily, dailyLast);
    expect(found.toLastGermination.value).toBeCloseTo(valueLast, 9);
  });

  test('has the first of two equal peaks', () => {
    expect(known(germinationValue(course(10, '4:4 8:4'))).peak).toEqual({ value: 10, day: 4 });
  });

  test('is undefined when nothing germinated', () => {
    expect(germinationValue(course(10, '', [5]))).toEqual({ undefined: 'nothing germinated' });
  });
});

describe('uniformity', () => {
  test.each([
    ['D1', D1, 2.365957321, 33 / 190], ['D2', D2, 2.068326952, 121 / 496],
    ['D4', D4, 0, 1], ['D5', D5, 2.134969975, 31 / 153],
  ] as const)('is uncertainty in bit, and synchrony: %s', (_, of, uncertainty, synchrony) => {
    const found = uniformity(of);
    expect(valueOf(found.uncertainty)).toBeCloseTo(uncertainty, 9);
    expectClose(valueOf(found.synchrony), synchrony);
  });

  test('has no synchrony with a single seed, and nothing without germination', () => {
    expect(uniformity(D3)).toEqual({ uncertainty: { value: 0 }, synchrony: { undefined: 'a single seed germinated' } });
    expect(uniformity(course(5, '', [4])).uncertainty).toEqual({ undefined: 'nothing germinated' });
  });
});
