import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dissolvedMg, type Exact, exact, powerOfTen } from '../../server/src/solutions/amounts.ts';
import { diluted, drawFor } from '../../server/src/solutions/dilution.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { codeOf, valueOf } from './helpers.ts';

const positive = fc.double({ min: 1e-6, max: 1e6, noNaN: true }).map(exact);
/** A part of a whole, above none and at most all of it. */
const share = fc.integer({ min: 1, max: 1_000_000 }).map(n => exact(n).div(1_000_000));

describe('a dilution', () => {
  it('of 10 mL of 1000 ppm with 10 mL of water is 500 ppm (common practice)', () => {
    expect(valueOf(diluted(exact(1000), exact(10), exact(20))).equals(500)).toBe(true);
  });

  // Check values computed by rational arithmetic.
  it.each([
    [250, 250, 1000, 62.5, 187.5],
    [100, 500, 5000, 10, 90],
    [400, 750, 2000, 150, 250],
    [50, 100, 1000, 5, 45],
  ])('for %s mL of %s mg/L from %s mg/L takes %s mL of stock and %s mL of water', (ml, target, stock, taken, water) => {
    const draw = valueOf(drawFor(exact(stock), exact(target), exact(ml)));
    expect([toNumber(draw.stockMl), toNumber(draw.waterMl)]).toEqual([taken, water]);
  });

  it('is never stronger than what it was made from, and loses no substance', () => {
    fc.assert(fc.property(positive, positive, share, (stock, to, part) => {
      const taken = to.mul(part);
      const ppm = valueOf(diluted(stock, taken, to));
      expect(ppm.lte(stock)).toBe(true);
      expect(dissolvedMg(ppm, to).equals(dissolvedMg(stock, taken))).toBe(true);
    }));
  });

  it('made from what drawFor says has the strength asked for', () => {
    fc.assert(fc.property(positive, positive, share, (stock, ml, part) => {
      const target = stock.mul(part);
      const { stockMl, waterMl } = valueOf(drawFor(stock, target, ml));
      expect(stockMl.add(waterMl).equals(ml)).toBe(true);
      expect(valueOf(diluted(stock, stockMl, ml)).equals(target)).toBe(true);
    }));
  });

  it('is refused above the strength of the stock', () => {
    const above = drawFor(exact(1000), exact(1000.001), exact(10));
    expect(codeOf(above)).toBe('stronger-than-stock');
    expect(!above.ok && above.refusal.message).toBe(
      'You cannot make 1000.001 ppm from 1000 ppm: water only makes it weaker.',
    );
  });

  it('is refused when it is made up to less than was taken', () => {
    expect(codeOf(diluted(exact(1000), exact(20), exact(10)))).toBe('more-than-made');
    expect(valueOf(diluted(exact(1000), exact(20), exact(20))).equals(1000)).toBe(true);
  });

  it.each([[0, 10, 10], [10, 0, 10], [10, 10, 0], [-1, 10, 10]])('is refused for %s, %s, %s', (stock, target, ml) => {
    expect(codeOf(drawFor(exact(stock), exact(target), exact(ml)))).toBe('not-positive');
  });

  it('may be one of many, until the exact number grows beyond all use', () => {
    let halves = exact(1000);
    for (let i = 0; i < 100; i += 1) halves = valueOf(diluted(halves, exact(10), exact(20)));
    expect(halves.mul(2n ** 100n).equals(1000)).toBe(true);
    let odd = diluted(exact(1000), exact(0.123456789), exact(0.987654321));
    for (let i = 0; i < 1000 && odd.ok; i += 1) {
      odd = diluted(odd.value, exact(0.1234567 + i / 1e7), exact(0.987654321));
    }
    expect(codeOf(odd)).toBe('too-many-dilutions');
    const half = (ppm: Exact) => diluted(ppm, exact(1), exact(2));
    expect([powerOfTen(1000), powerOfTen(-1000)].map(ppm => half(ppm).ok)).toEqual([true, true]);
    expect([powerOfTen(1001), powerOfTen(-1001)].map(ppm => half(ppm).ok)).toEqual([false, false]);
  });

  it('of no volume is refused', () => {
    expect(codeOf(diluted(exact(1000), exact(0), exact(10)))).toBe('not-positive');
    expect(codeOf(diluted(exact(1000), exact(0), exact(0)))).toBe('not-positive');
  });
});
