import { describe, expect, test } from 'vitest';
import { keywords } from '../../server/src/model/keywords.ts';
import { listed, nearest } from '../../server/src/syntax/nearest.ts';

describe('the nearest word', () => {
  test.each([
    ['cuont', 'count'], ['dya', 'day'], ['Sow', 'sow'], ['sown', 'sow'], ['counts', 'count'], ['discrad', 'discard'],
    ['scarfy', 'scarify'], ['lto', 'lot'], ['x', undefined], ['Radicles', undefined], ['', undefined], ['germinate', undefined],
    ['a'.repeat(100_000), undefined],
  ])('to %s is %s', (word, expected) => {
    expect(nearest(word, Object.keys(keywords))).toBe(expected);
  });

  test('is written as the candidate is', () => {
    expect(nearest('PPM', ['ppm'])).toBe('ppm');
    expect(nearest('ver-25', ['VER-24', 'PRI-25'])).toBe('VER-24');
  });

  test('is none where there are none', () => {
    expect(nearest('count', [])).toBeUndefined();
  });
});

test('a list has its last word before the last item', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(items => listed(items, 'or'))).toEqual(['', 'a', 'a or b', 'a, b or c']);
});
