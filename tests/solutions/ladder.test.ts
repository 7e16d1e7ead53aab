import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dissolvedMg, type Exact, exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { ladder, type LadderWay, type Rung } from '../../server/src/solutions/ladder.ts';
import { codeOf, valueOf } from './helpers.ts';

const ways = ['from the stock', 'down the ladder'] as const satisfies readonly LadderWay[];
const numbers = (rungs: readonly Rung[], key: 'drawMl' | 'waterMl' | 'makeMl' | 'keepMl'): number[] =>
  rungs.map(rung => toNumber(rung[key]));

describe('a ladder of 1000, 500 and 250 ppm', () => {
  // The volumes follow from C1 V1 = C2 V2 and were worked out by hand.
  const targets = [250, 1000, 500].map(exact);

  it('is drawn from one stock of 2000 ppm, the strongest first', () => {
    const { rungs, stockMl, waterMl } = valueOf(ladder(exact(2000), targets, exact(20)));
    expect(rungs.map(({ ppm }) => toNumber(ppm))).toEqual([1000, 500, 250]);
    expect(numbers(rungs, 'drawMl')).toEqual([10, 5, 2.5]);
    expect(numbers(rungs, 'waterMl')).toEqual([10, 15, 17.5]);
    expect([toNumber(stockMl), toNumber(waterMl)]).toEqual([17.5, 42.5]);
  });

  it('made each from the one above holds what the next one takes', () => {
    const { rungs, stockMl } = valueOf(ladder(exact(1000), targets, exact(20), 'down the ladder'));
    expect(rungs.map(({ from }) => from)).toEqual([undefined, 0, 1]);
    expect(numbers(rungs, 'makeMl')).toEqual([35, 30, 20]);
    expect(numbers(rungs, 'drawMl')).toEqual([35, 15, 10]);
    expect(numbers(rungs, 'waterMl')).toEqual([0, 15, 10]);
    expect(toNumber(stockMl)).toBe(35);
  });
});

describe('any ladder', () => {
  it('conserves what is dissolved', () => {
    const targets = fc.uniqueArray(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 6 });
    fc.assert(fc.property(targets, fc.integer({ min: 1, max: 500 }), fc.constantFrom(...ways), (ppms, keep, way) => {
      const stock = exact(5000);
      const { rungs, stockMl, waterMl } = valueOf(ladder(stock, ppms.map(exact), exact(keep), way));
      const sum = (of: (rung: Rung) => Exact): Exact => rungs.map(of).reduce((a, b) => a.add(b), exact(0));
      expect(dissolvedMg(stock, stockMl).equals(sum(rung => dissolvedMg(rung.ppm, rung.keepMl)))).toBe(true);
      expect(stockMl.add(waterMl).equals(sum(rung => rung.keepMl))).toBe(true);
    }));
  });

  it('is refused above the stock, without a rung and without a volume', () => {
    expect(codeOf(ladder(exact(400), [exact(500)], exact(20)))).toBe('stronger-than-stock');
    expect(codeOf(ladder(exact(400), [], exact(20)))).toBe('not-positive');
    expect(codeOf(ladder(exact(400), [exact(0)], exact(20)))).toBe('not-positive');
    expect(codeOf(ladder(exact(400), [exact(100), exact(0)], exact(20)))).toBe('not-positive');
    expect(codeOf(ladder(exact(0), [exact(100)], exact(20)))).toBe('not-positive');
    expect(codeOf(ladder(exact(400), [exact(100)], exact(0)))).toBe('not-positive');
  });
});
