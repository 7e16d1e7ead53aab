import { describe, expect, it } from 'vitest';
import type { StrengthUnit } from '../../server/src/model/quantity.ts';
import { exact } from '../../server/src/solutions/amounts.ts';
import { type Comparison, compareDoses, mayBeAsStrong } from '../../server/src/solutions/comparison.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { agent } from './helpers.ts';

function compare(
  [a, value, unit]: readonly [string, number, StrengthUnit],
  [b, second, secondUnit]: readonly [string, number, StrengthUnit],
): Comparison {
  return compareDoses(
    { agent: agent(a), strength: { value, unit } },
    { agent: agent(b), strength: { value: second, unit: secondUnit } },
  );
}

describe('two doses', () => {
  it('of one agent compare across units without a rounding', () => {
    expect(compare(['GA3', 0.05, '%'], ['GA3', 500, 'ppm'])).toMatchObject({ comparable: true, order: 0 });
    expect(compare(['GA3', 1000.1, 'mg/L'], ['GA3', 1, 'g/L'])).toMatchObject({ order: 1 });
    const twice = compare(['KNO3', 0.4, '%'], ['KNO3', 0.2, '%']);
    expect(twice.comparable && twice.ratio && toNumber(twice.ratio)).toBe(2);
  });

  it('of a salt and its acid compare by the acid', () => {
    // 1110 mg/L of the salt is 1000.03 mg/L of the acid; check value computed by rational arithmetic.
    expect(compare(['GA3K', 1110, 'ppm'], ['GA3', 1000, 'ppm'])).toMatchObject({ comparable: true, order: 1 });
    const below = compare(['GA3K', 1109, 'ppm'], ['GA3', 1000, 'ppm']);
    expect(below).toMatchObject({ comparable: true, order: -1 });
    expect(below.comparable && below.assumptions.map(({ id }) => id)).toEqual(['as-salt']);
    expect(compare(['GA3K', 1, 'mM'], ['GA3', 1, 'mM'])).toMatchObject({ comparable: true, order: 0 });
  });

  it('of different agents do not compare', () => {
    const other = compare(['GA3', 500, 'ppm'], ['KNO3', 500, 'ppm']);
    expect(other).toMatchObject({ comparable: false });
    expect(!other.comparable && other.why).toContain('different agents');
  });

  it('do not compare when one was not measured, whichever it is', () => {
    const measured = { agent: agent('GA3'), strength: { value: 500, unit: 'ppm' } } as const;
    const pinch = { agent: agent('GA3'), strength: 'unmeasured' } as const;
    expect(compareDoses(pinch, measured)).toMatchObject({ comparable: false });
    expect(compareDoses(measured, pinch)).toMatchObject({ comparable: false });
  });

  it('have no ratio to nothing', () => {
    expect(compare(['GA3', 500, 'ppm'], ['GA3', 0, 'ppm'])).toMatchObject({ order: 1, ratio: undefined });
  });
});

describe('what is written of a liquid', () => {
  // 5 % either way as people measure; each halving by eye is 10 % off at most: 0.9 x 0.9 is 0.81, 1.1 x 1.1 is 1.21.
  it.each([
    [0, 95, 105],
    [1, 90, 110],
    [2, 81, 121],
  ])('may be what it holds: after %s halvings from %s to %s for 100', (halvings, low, high) => {
    const may = (written: number) => mayBeAsStrong(exact(written), exact(100), halvings);
    expect([low - 0.01, low, 100, high, high + 0.01].map(may)).toEqual([false, true, true, true, false]);
  });
});
