import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dissolvedMg, type Exact, exact } from '../../server/src/solutions/amounts.ts';
import { diluted } from '../../server/src/solutions/dilution.ts';
import { ledgerOf } from '../../server/src/solutions/ledger.ts';
import { stockFromPowder } from '../../server/src/solutions/stock.ts';
import { agent, valueOf } from './helpers.ts';

interface Vessel {
  readonly ppm: Exact;
  readonly madeMl: Exact;
  readonly draws: { key: number; when: number; amount: Exact }[];
}

describe('any tree of stocks and dilutions', () => {
  const stock = fc.record({
    mg: fc.double({ min: 0.001, max: 1000, noNaN: true }),
    ml: fc.double({ min: 0.001, max: 1000, noNaN: true }),
    percent: fc.integer({ min: 1, max: 100 }),
    halved: fc.integer({ min: 0, max: 4 }),
  });
  const step = fc.record({
    source: fc.nat(),
    /** Of what is left in the source, in hundredths. */
    part: fc.integer({ min: 1, max: 100 }),
    /** Times the volume taken, in tenths. */
    times: fc.integer({ min: 10, max: 200 }),
  });

  it('holds in all its vessels just what was weighed, and no dilution is stronger than its source', () => {
    fc.assert(fc.property(stock, fc.array(step, { maxLength: 8 }), ({ mg, ml, percent, halved }, steps) => {
      const made = valueOf(stockFromPowder({
        agent: agent('GA3'),
        mass: { value: mg, unit: 'mg' },
        volume: { value: ml, unit: 'mL' },
        purity: { percent },
        halved,
      }));
      const vessels: Vessel[] = [{ ppm: made.ppm, madeMl: made.volumeMl, draws: [] }];
      for (const [when, { source, part, times }] of steps.entries()) {
        const from = vessels[source % vessels.length]!;
        const takenMl = ledgerOf(from.madeMl, from.draws).left!.most.mul(part).div(100);
        if (takenMl.equals(0)) continue;
        from.draws.push({ key: when, when, amount: takenMl });
        const madeMl = takenMl.mul(times).div(10);
        const ppm = valueOf(diluted(from.ppm, takenMl, madeMl));
        expect(ppm.lte(from.ppm)).toBe(true);
        vessels.push({ ppm, madeMl, draws: [] });
      }
      const held = vessels
        .map(({ ppm, madeMl, draws }) => dissolvedMg(ppm, ledgerOf(madeMl, draws).left!.most))
        .reduce((a, b) => a.add(b), exact(0));
      const weighed = exact(mg).mul(percent).div(100).div(2 ** halved);
      expect(held.equals(weighed)).toBe(true);
    }), { numRuns: 60 });
  });
});
