import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import {
  allAsStock,
  halvedText,
  halvingsFor,
  insteadOfDrawing,
  insteadOfWeighing,
  type Remedy,
  type Wanted,
} from '../../server/src/solutions/remedies.ts';
import { measure } from '../../server/src/solutions/measurable.ts';
import { agent } from './helpers.ts';

function wanted(ppm: number, ml: number, bench: Wanted['bench'] = 'kitchen'): Wanted {
  return { agent: agent('GA3'), ppm: exact(ppm), volumeMl: exact(ml), bench };
}

const texts = (remedies: readonly Remedy[]): string[] => remedies.map(({ text }) => text);
const amount = (remedy: Remedy, key: string): number => {
  const shown = remedy.amounts[key];
  if (shown === undefined) throw new Error(`no ${key}`);
  return shown.value * ({ g: 1000, kg: 1e6, ug: 0.001, L: 1000, uL: 0.001 }[shown.unit] ?? 1);
};

describe('what to do when powder is too little to weigh', () => {
  it('is a stronger stock to dilute, more of it, or a packet to halve', () => {
    // 2 mg of GA3 for 20 mL of 100 ppm, on a 0.01 g scale that takes 100 mg; worked out by hand.
    expect(texts(insteadOfWeighing(wanted(100, 20), exact(1), exact(100)))).toEqual([
      'Make a stronger stock and dilute it: 100 mg of GA3 powder made up to 100 mL is 1000 ppm; ' +
        '2 mL of that made up to 20 mL is 100 ppm.',
      'Make more of it: 100 mg of GA3 powder made up to 1 L.',
      'Halve a packet by eye: of 100 mg of GA3 powder, halved 4 times, one part is about 6.25 mg; make it up to 62.5 mL.',
    ]);
  });

  it('is a stock that is easy to dilute: twice as strong, four times, up to a thousand times', () => {
    // 100 mg in 100 mL are 1000 ppm, and 10 mL of that are diluted.
    const times = [2, 4, 5, 8, 10, 20, 25, 40, 50, 100, 200, 250, 500, 1000];
    const stocks = times.map(factor => insteadOfWeighing(wanted(1000 / factor, 10 * factor), exact(1), exact(100))[0]!);
    expect(stocks.map(remedy => ['stock', 'stockMade', 'drawn'].map(key => amount(remedy, key)).join())).toEqual(times.map(() => '1000,100,10'));
  });

  it('is no stock above what dissolves in water, and no more than anybody wants', () => {
    const remedies = insteadOfWeighing(wanted(10, 20), exact(1), exact(100));
    expect(remedies.map(({ kind }) => kind)).toEqual(['stronger-then-dilute', 'halve-packet']);
    expect(amount(remedies[0]!, 'stock')).toBeLessThanOrEqual(5000);
  });

  it('is no packet where the agent is sold by the bag, where the whole packet is wanted, and where it makes litres', () => {
    const kinds = (one: Wanted) => insteadOfWeighing(one, exact(1), exact(100)).map(({ kind }) => kind);
    expect(kinds(wanted(100, 20))).toContain('halve-packet');
    expect(kinds({ ...wanted(100, 20), agent: agent('KNO3') })).not.toContain('halve-packet');
    // 100 mg at 500 ppm are 200 mL; at 2 ppm even a sixteenth of it is above 2 L.
    expect(kinds(wanted(500, 101))).not.toContain('halve-packet');
    expect(kinds(wanted(500, 100))).toContain('halve-packet');
    expect(kinds(wanted(2, 20))).not.toContain('halve-packet');
  });

  it('gives the strength asked for, whichever is chosen', () => {
    const ppm = fc.integer({ min: 1, max: 2000 });
    const volume = fc.integer({ min: 1, max: 500 });
    fc.assert(fc.property(ppm, volume, fc.integer({ min: 10, max: 100 }), (target, ml, percent) => {
      for (const remedy of insteadOfWeighing(wanted(target, ml), exact(percent).div(100), exact(100))) {
        const pure = amount(remedy, remedy.kind === 'halve-packet' ? 'portion' : 'powder') * percent / 100;
        if (remedy.kind === 'stronger-then-dilute') {
          const stock = pure / amount(remedy, 'stockMade') * 1000;
          expect(stock / amount(remedy, 'stock')).toBeCloseTo(1, 9);
          expect(stock * amount(remedy, 'drawn') / ml / target).toBeCloseTo(1, 9);
          expect(amount(remedy, 'drawn')).toBeLessThanOrEqual(amount(remedy, 'stockMade'));
        } else {
          expect(pure / amount(remedy, 'makeUpTo') * 1000 / target).toBeCloseTo(1, 9);
        }
      }
    }));
  });
});

describe('a packet', () => {
  it('is halved as often as still makes the volume, at most four times', () => {
    expect(halvingsFor(exact(100), exact(1), exact(500), exact(20))).toBe(3);
    expect(halvingsFor(exact(100), exact(1), exact(500), exact(200))).toBe(0);
    expect(halvingsFor(exact(100), exact(1), exact(500), exact(201))).toBeUndefined();
    expect(halvingsFor(exact(100_000), exact(1), exact(500), exact(20))).toBe(4);
  });

  it('is better dissolved whole and diluted', () => {
    expect(texts(allAsStock(wanted(500, 20), exact(1), exact(1000)))).toEqual([
      'Make a stronger stock and dilute it: 1 g of GA3 powder made up to 200 mL is 5000 ppm; ' +
        '2 mL of that made up to 20 mL is 500 ppm.',
    ]);
    expect(allAsStock(wanted(5000, 20), exact(1), exact(1000))).toEqual([]);
  });

  it('is said to be halved in words', () => {
    expect([0, 1, 3].map(halvedText)).toEqual(['Not halved', 'Halved once', 'Halved 3 times']);
  });
});

describe('what to do when a draw is too small to measure', () => {
  it('is to dilute in two steps, or to make more', () => {
    expect(texts(insteadOfDrawing(wanted(0.5, 100), exact(1000), exact(0.2)))).toEqual([
      'Dilute in two steps: 1 mL of the stock made up to 10 mL is 100 ppm; 0.5 mL of that made up to 100 mL is 0.5 ppm.',
      'Make more of it: 0.2 mL of the stock made up to 400 mL.',
    ]);
  });

  it('is to make more where the volume itself is too small', () => {
    expect(insteadOfDrawing(wanted(100, 0.1), exact(1000), exact(0.2)).map(({ kind }) => kind)).toEqual(['make-more']);
  });

  it('gives the strength asked for, from what can be measured and is there, in no more than anybody wants', () => {
    const [targets, volumes] = [fc.integer({ min: 1, max: 50_000 }), fc.integer({ min: 1, max: 2000 })];
    fc.assert(fc.property(targets, volumes, (hundredths, ml) => {
      const target = hundredths / 100;
      for (const remedy of insteadOfDrawing(wanted(target, ml), exact(1000), exact(0.2))) {
        if (remedy.kind === 'in-two-steps') {
          for (const key of ['first', 'second']) {
            expect(measure(exact(amount(remedy, key)), 'volume', 'kitchen'), key).toMatchObject({ measurable: true });
          }
          expect(amount(remedy, 'second')).toBeLessThanOrEqual(Math.min(amount(remedy, 'middleMade'), ml));
        } else {
          expect(amount(remedy, 'makeUpTo')).toBeLessThanOrEqual(2000);
        }
        if (remedy.kind === 'in-two-steps') {
          const middle = 1000 * amount(remedy, 'first') / amount(remedy, 'middleMade');
          expect(middle / amount(remedy, 'middle')).toBeCloseTo(1, 9);
          expect(middle * amount(remedy, 'second') / ml / target).toBeCloseTo(1, 9);
        } else {
          expect(1000 * amount(remedy, 'drawn') / amount(remedy, 'makeUpTo') / target).toBeCloseTo(1, 9);
        }
      }
    }));
  });
});
