import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holm } from '../../server/src/measures/holm.ts';
import { rankScores, trend } from '../../server/src/measures/trend.ts';
import { expectClose, known } from './helpers.ts';

describe('the trend over doses', () => {
  test("finds that of Fleiss' smokers, 8.2249 with p 0.004132, as in the documentation of prop.trend.test", () => {
    const patients = [86, 93, 136, 82];
    const found = known(trend([83, 90, 129, 70].map((x, i) => ({ score: i + 1, x, n: patients[i]! }))));
    expect(found.chiSquare).toBeCloseTo(8.2249, 4);
    expect(found.p).toBeCloseTo(0.004132, 6);
    // R 4.2.2.
    expectClose(found.chiSquare, 8.22492228519774);
    expectClose(found.p, 0.00413189747764142);
    expect(found.slope).toBeLessThan(0);
  });

  test('does not depend on the unit or the origin of the score', () => {
    const rung = fc.integer({ min: 1, max: 60 }).chain(n => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(fc.property(fc.array(rung, { minLength: 2, maxLength: 6 }), shares => {
      const at = (score: (i: number) => number) => trend(shares.map(([x, n], i) => ({ score: score(i), x, n })));
      const found = at(i => i);
      const other = at(i => 250 * i + 40);
      if ('undefined' in found) expect(other).toEqual(found);
      else expect(known(other).chiSquare).toBeCloseTo(found.chiSquare, 6);
    }));
  });

  test('does not change when a dose is written as two batches of it', () => {
    const whole = known(trend([{ score: 0, x: 2, n: 10 }, { score: 1, x: 9, n: 20 }, { score: 2, x: 8, n: 10 }]));
    const parts = known(trend([
      { score: 0, x: 2, n: 10 }, { score: 1, x: 3, n: 8 }, { score: 1, x: 6, n: 12 }, { score: 2, x: 8, n: 10 },
    ]));
    expectClose(parts.chiSquare, whole.chiSquare);
  });

  test('is undefined with one dose, or where all germinated alike', () => {
    expect(trend([{ score: 1, x: 2, n: 10 }, { score: 1, x: 5, n: 10 }])).toEqual({ undefined: 'there is only one dose' });
    expect(trend([{ score: 0, x: 0, n: 10 }, { score: 1, x: 0, n: 10 }])).toEqual({ undefined: 'all doses germinated alike' });
    expect(trend([])).toHaveProperty('undefined');
  });

  test('scores doses by their rank, equal ones alike', () => {
    expect(rankScores([0, 250, 500, 1000])).toEqual([0, 1, 2, 3]);
    expect(rankScores([500, 0, 500, 1000])).toEqual([1, 0, 1, 2]);
  });
});

describe("Holm's correction", () => {
  // R 4.2.2, p.adjust(p, 'holm').
  test.each([
    [[0.01, 0.02, 0.03, 0.04, 0.05], [0.05, 0.08, 0.09, 0.09, 0.09]], [[0.01, 0.04, 0.03], [0.03, 0.06, 0.06]],
  ])(
    'agrees with p.adjust of R: %j', (ps, wanted) => {
      for (const [i, p] of holm(ps).entries()) expectClose(p, wanted[i]!);
    });

  test('leaves a single p-value and changes nothing in the order of several', () => {
    expect(holm([0.2])).toEqual([0.2]);
    expect(holm([])).toEqual([]);
    const p01 = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(fc.property(fc.array(p01, { minLength: 2, maxLength: 8 }), ps => {
      const adjusted = holm(ps);
      for (const [i, p] of ps.entries()) {
        expect(adjusted[i]).toBeGreaterThanOrEqual(p);
        expect(adjusted[i]).toBeLessThanOrEqual(1);
        for (const [j, q] of ps.entries()) if (p < q) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j]!);
      }
      const turned = [...holm([...ps].reverse())].reverse();
      expect(turned).toEqual(adjusted);
    }));
  });
});
