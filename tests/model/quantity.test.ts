import { describe, expect, test } from 'vitest';
import { dayOf } from '../../server/src/model/day.ts';
import {
  celsius, dayAfter, minutesOf, printQuantity, printTemperature, spellingsOf, unitOf,
} from '../../server/src/model/quantity.ts';

describe('the unit that is meant by', () => {
  test.each([
    ['ML', 'volume', 'mL'], ['litres', 'volume', 'L'], ['µl', 'volume', 'uL'], ['μL', 'volume', 'uL'],
    ['mcg', 'mass', 'ug'], ['µg', 'mass', 'ug'], ['grams', 'mass', 'g'],
    ['PPM', 'strength', 'ppm'], ['mg/l', 'strength', 'mg/L'], ['mg/mL', 'strength', 'g/L'], ['ug/ml', 'strength', 'mg/L'],
    ['mmol/L', 'strength', 'mM'], ['μM', 'strength', 'uM'],
    ['d', 'duration', 'days'], ['Hours', 'duration', 'h'], ['WEEKS', 'duration', 'weeks'],
    ['℃', 'temperature', 'C'], ['° F', 'temperature', 'F'], ['g/mol', 'molarMass', 'g/mol'],
  ])('%s is one of %s: %s', (spelling, dimension, unit) => {
    expect(unitOf(spelling)).toMatchObject({ dimension, unit });
  });

  test.each(['MM', 'Mg', 'm', 'H', 'seeds', '', 'constructor', '°'])('%j is none', spelling => {
    expect(unitOf(spelling)).toBeUndefined();
  });

  test('is printed in a spelling that means the same', () => {
    for (const dimension of ['mass', 'volume', 'strength', 'duration', 'temperature', 'molarMass'] as const) {
      for (const spelling of spellingsOf(dimension)) {
        const { unit, printed } = unitOf(spelling)!;
        expect(unitOf(printed)).toEqual({ dimension, unit, printed });
      }
    }
  });
});

describe('the end of a stage', () => {
  test.each([
    [12, 'weeks', dayOf(2026, 3, 26)], [36, 'h', dayOf(2026, 1, 3)], [24, 'h', dayOf(2026, 1, 2)], [1, 'min', dayOf(2026, 1, 2)],
    [90, 'days', dayOf(2026, 4, 1)], [3, 'months', dayOf(2026, 4, 1)], [0.5, 'years', dayOf(2026, 7, 1)],
  ] as const)('of %d %s from 2026-01-01 on is right', (value, unit, end) => {
    expect(dayAfter(dayOf(2026, 1, 1)!, { value, unit })).toBe(end);
  });

  test('is the last day that can be written at the latest', () => {
    expect(dayAfter(dayOf(9999, 12, 30)!, { value: 1, unit: 'days' })).toBe(dayOf(9999, 12, 31));
    expect(dayAfter(dayOf(9999, 1, 1)!, { value: 100, unit: 'years' })).toBe(dayOf(9999, 12, 31));
    expect(dayAfter(dayOf(9999, 1, 1)!, { value: 100, unit: 'weeks' })).toBe(dayOf(9999, 12, 31));
  });

  test('is not known in minutes where months are not alike', () => {
    expect(minutesOf({ value: 1, unit: 'months' })).toBeUndefined();
    expect(minutesOf({ value: 1, unit: 'years' })).toBeUndefined();
    expect(minutesOf({ value: 1.5, unit: 'h' })).toBe(90);
    expect(minutesOf({ value: 2, unit: 'weeks' })).toBe(20_160);
  });
});

test('degrees Fahrenheit are turned into Celsius by the fixed points of both scales', () => {
  expect([32, 212, -40].map(degrees => celsius(degrees, 'F'))).toEqual([0, 100, -40]);
  expect(celsius(4, 'C')).toBe(4);
});

describe('a quantity in print', () => {
  test.each([
    [{ value: 1, unit: 'weeks' }, '1 week'], [{ value: 12, unit: 'weeks' }, '12 weeks'], [{ value: 0.5, unit: 'years' }, '0.5 years'],
    [{ value: 1, unit: 'h' }, '1 h'], [{ value: 0.05, unit: '%' }, '0.05 %'], [{ value: 20, unit: 'mg', decimals: 1 }, '20.0 mg'],
  ])('of %j is %s', (quantity, text) => {
    expect(printQuantity(quantity)).toBe(text);
  });

  test('has both temperatures of a day', () => {
    expect(printTemperature({ day: 20, night: 10, unit: 'C' })).toBe('20/10 C');
    expect(printTemperature({ day: 39, night: undefined, unit: 'F' })).toBe('39 F');
  });
});
