import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spread } from '../../server/src/pictures/spread.ts';

describe('spread', () => {
  test('leaves alone what is far enough apart', () => {
    expect(spread([10, 90, 40], 20, { low: 0, high: 100 })).toEqual([10, 90, 40]);
  });

  test('moves two that touch by the same way', () => {
    expect(spread([50, 52, 90], 10, { low: 0, high: 100 })).toEqual([46, 56, 90]);
  });

  test('keeps within the limits', () => {
    expect(spread([98, 99], 10, { low: 0, high: 100 })).toEqual([90, 100]);
    expect(spread([0, 0], 10, { low: 0, high: 100 })).toEqual([0, 10]);
  });

  test('shares the room evenly where there is too little', () => {
    expect(spread([5, 5, 5], 10, { low: 0, high: 10 })).toEqual([0, 5, 10]);
  });

  test('keeps any number of labels apart, in their order and within the limits', () => {
    const wanted = fc.array(fc.integer({ min: -20, max: 320 }), { minLength: 1, maxLength: 12 });
    fc.assert(fc.property(wanted, places => {
      const found = spread(places, 20, { low: 0, high: 300 });
      const inOrder = places.map((at, i) => ({ at, to: found[i]! })).sort((a, b) => a.at - b.at || a.to - b.to);
      for (const [i, { to }] of inOrder.entries()) {
        expect(to).toBeGreaterThanOrEqual(-1e-9);
        expect(to).toBeLessThanOrEqual(300 + 1e-9);
        if (i > 0) expect(to - inOrder[i - 1]!.to).toBeGreaterThanOrEqual(20 - 1e-9);
      }
    }));
  });
});
