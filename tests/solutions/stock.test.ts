import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { halvedMass, type PowderStock, stockFromPowder, type StockStrength } from '../../server/src/solutions/stock.ts';
import { agent, codeOf, valueOf } from './helpers.ts';

function stock(word: string, mg: number, ml: number, rest: Partial<PowderStock> = {}): StockStrength {
  return valueOf(stockFromPowder({
    agent: agent(word),
    mass: { value: mg, unit: 'mg' },
    volume: { value: ml, unit: 'mL' },
    ...rest,
  }));
}

const ids = ({ assumptions }: StockStrength): string[] => assumptions.map(({ id }) => id);

describe('a stock from powder', () => {
  it('of 10 mg in 10 mL is 1000 ppm (common practice)', () => {
    const made = stock('GA3', 10, 10);
    expect(made.ppm.equals(1000)).toBe(true);
    expect(ids(made)).toEqual(['purity-not-given']);
  });

  it('of 10 mg of 90 % powder in 40 mL is 225 mg/L', () => {
    // Check value computed by rational arithmetic.
    const made = stock('GA3', 10, 40, { purity: { percent: 90 } });
    expect(made.ppm.equals(225)).toBe(true);
    expect(made.dissolvedMg.equals(9)).toBe(true);
    expect(ids(made)).toEqual(['purity-is-of-agent']);
  });

  it('of 20 mg of 90 % powder in 18 mL is 1000 mg/L', () => {
    expect(stock('GA3', 20, 18, { purity: { percent: 90 } }).ppm.equals(1000)).toBe(true);
  });

  it('of 100 mg of a 75 % potassium salt in 100 mL is 750 mg/L of salt and 675.696 mg/L of acid', () => {
    // Check value computed by rational arithmetic.
    const made = stock('GA3K', 100, 100, { purity: { percent: 75, form: 'salt' } });
    expect(made.ppm.equals(750)).toBe(true);
    expect(toNumber(made.acidPpm!)).toBeCloseTo(675.696, 3);
    expect(ids(made)).toEqual(['purity-is-of-agent', 'as-salt']);
  });

  it('is the same acid when the record calls the salt by its acid', () => {
    const made = stock('GA3', 100, 100, { purity: { percent: 75, form: 'salt' } });
    expect(toNumber(made.ppm)).toBeCloseTo(675.696, 3);
    expect(ids(made)).toEqual(['purity-of-salt']);
  });

  it('holds more salt than the acid that the label states', () => {
    const made = stock('GA3K', 100, 100, { purity: { percent: 67.5696, form: 'acid' } });
    expect(toNumber(made.ppm)).toBeCloseTo(750, 3);
    expect(toNumber(made.acidPpm!)).toBe(675.696);
    expect(ids(made)).toEqual(['purity-of-acid', 'as-salt']);
  });

  it('from a packet halved twice holds a quarter (common practice)', () => {
    const made = stock('GA3', 100, 25, { halved: 2 });
    expect(made.powderMg.equals(25)).toBe(true);
    expect(made.ppm.equals(1000)).toBe(true);
  });

  it('says when it is more than dissolves in water', () => {
    expect(stock('GA3', 60, 10).aboveSolubility?.source.kind).toBe('read');
    expect(stock('GA3', 50, 10).aboveSolubility).toBeUndefined();
    expect(stock('GA3K', 60, 10).aboveSolubility).toBeUndefined();
  });

  it.each([
    ['GA3', { mass: { value: 0, unit: 'mg' } }, 'not-positive'],
    ['GA3', { volume: { value: 0, unit: 'mL' } }, 'not-positive'],
    ['GA3', { purity: { percent: 0 } }, 'bad-purity'],
    ['GA3', { purity: { percent: 100.01 } }, 'bad-purity'],
    ['GA3', { purity: { percent: Number.NaN } }, 'bad-purity'],
    ['GA3', { purity: { percent: 100.01, form: 'salt' } }, 'bad-purity'],
    ['GA3K', { purity: { percent: 95, form: 'acid' } }, 'bad-purity'],
    ['GA3', { halved: 1.5 }, 'bad-halving'],
    ['GA3', { halved: -1 }, 'bad-halving'],
    ['GA3', { halved: 1e9 }, 'bad-halving'],
    ['water', {}, 'no-strength'],
    ['smoke', {}, 'by-volume'],
  ] as const)('of %s with %o is refused: %s', (word, rest, code) => {
    const made = stockFromPowder({
      agent: agent(word), mass: { value: 1, unit: 'mg' }, volume: { value: 1, unit: 'mL' }, ...rest,
    });
    expect(codeOf(made)).toBe(code);
  });
});

describe('a packet', () => {
  it('holds what its purity says, from the least to all of it: 100 mg in 1 mL', () => {
    expect([0.5, 1, 100].map(percent => toNumber(stock('GA3', 100, 1, { purity: { percent } }).ppm))).toEqual([500, 1000, 100_000]);
  });

  it('is halved 20 times at most', () => {
    expect(valueOf(halvedMass(exact(2 ** 20), 20)).equals(1)).toBe(true);
    expect(codeOf(halvedMass(exact(2 ** 21), 21))).toBe('bad-halving');
  });

  it('divided by halving is all there again', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 0, max: 20 }), (mg, times) => {
      expect(valueOf(halvedMass(exact(mg), times)).mul(2 ** times).equals(mg)).toBe(true);
    }));
  });
});

describe('the uncertainty of a stock', () => {
  it('comes from the last digits written: 20 mg is read to 0.5 mg and 18 mL to 0.5 mL', () => {
    const { uncertainty } = stock('GA3', 20, 18, { purity: { percent: 90 } });
    if (uncertainty.kind === 'none') throw new Error(uncertainty.why);
    expect(toNumber(uncertainty.low)).toBeCloseTo(19.5 * 900 / 18.5, 9);
    expect(toNumber(uncertainty.high)).toBeCloseTo(20.5 * 900 / 17.5, 9);
    expect(uncertainty.counted).toEqual([
      'mass read to the last digit written in mg (2.5 %)',
      'volume read to the last digit written in mL (2.78 %)',
    ]);
    expect(uncertainty.notCounted).toEqual(['purity, as the label has it']);
  });

  it('counts the zeros that the record writes', () => {
    const { uncertainty } = stock('GA3', 20, 18, {
      mass: { value: 20, unit: 'mg', decimals: 1 }, volume: { value: 18, unit: 'mL', decimals: 1 },
    });
    if (uncertainty.kind === 'none') throw new Error(uncertainty.why);
    expect(toNumber(uncertainty.low)).toBeCloseTo(19.95 * 1000 / 18.05, 9);
    expect(uncertainty.notCounted).toEqual(['purity (not given)']);
  });

  it('of a halved packet comes from halving by eye', () => {
    const { uncertainty } = stock('GA3', 100, 25, { halved: 2 });
    if (uncertainty.kind === 'none') throw new Error(uncertainty.why);
    expect(toNumber(uncertainty.low)).toBeCloseTo(100_000 * 0.45 ** 2 / 25.5, 9);
    expect(toNumber(uncertainty.high)).toBeCloseTo(100_000 * 0.55 ** 2 / 24.5, 9);
    expect(uncertainty.counted[0]).toBe('halving by eye, 10 % each time (common practice, no source)');
    expect(stock('GA3', 100, 25, { halved: 1 }).uncertainty).toMatchObject({ counted: uncertainty.counted });
    expect(uncertainty.notCounted).toContain('mass of the packet, as its label has it');
  });

  it('of a portion that what was left tells of comes from that', () => {
    // By hand: 10 to 15 mg of 90 % powder in 24.5 to 25.5 mL.
    const portion = { low: exact(10), high: exact(15) };
    const { uncertainty } = stock('GA3', 100, 25, { halved: 3, portion, purity: { percent: 90 } });
    if (uncertainty.kind === 'none') throw new Error(uncertainty.why);
    expect(toNumber(uncertainty.low)).toBeCloseTo(9000 / 25.5, 9);
    expect(toNumber(uncertainty.high)).toBeCloseTo(13_500 / 24.5, 9);
  });

  it('is not made up where the record does not tell', () => {
    const whole = stock('GA3', 1, 100, { mass: { value: 1, unit: 'g' } });
    expect(whole.uncertainty).toMatchObject({ kind: 'none' });
    expect(whole.uncertainty.kind === 'none' && whole.uncertainty.why).toContain('“1 g”');
    const litre = stock('GA3', 100, 1, { volume: { value: 1, unit: 'L' } });
    expect(litre.uncertainty.kind === 'none' && litre.uncertainty.why).toContain('volume');
  });

  it('always holds the strength itself', () => {
    const mg = fc.integer({ min: 3, max: 5000 });
    const ml = fc.integer({ min: 3, max: 5000 });
    fc.assert(fc.property(mg, ml, fc.integer({ min: 0, max: 6 }), (mass, volume, halved) => {
      const { ppm, uncertainty } = stock('GA3', mass, volume, { halved });
      if (uncertainty.kind === 'none') throw new Error(uncertainty.why);
      expect(uncertainty.low.lt(ppm) && uncertainty.high.gt(ppm)).toBe(true);
    }));
  });
});
