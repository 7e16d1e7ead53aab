import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { measure, measureWith, tooCoarse } from '../../server/src/solutions/measurable.ts';
import { type Bench, leastOf, leastText, type Tool, type ToolId, toolsFor } from '../../server/src/solutions/tools.ts';

function tool(id: ToolId): Tool {
  const found = [...toolsFor('mass', 'laboratory'), ...toolsFor('volume', 'laboratory')].find(t => t.id === id);
  if (found === undefined) throw new Error(`no tool ${id}`);
  return found;
}

function best(amount: number, measures: Tool['measures'], bench: Bench): [string, string] | string {
  const found = measure(exact(amount), measures, bench);
  return found.measurable ? [found.best.tool.id, found.best.shown.text] : found.message;
}

describe('the tool for an amount', () => {
  it.each([
    [25_000, 'mass', 'kitchen', 'kitchen-scale', '25 g'],
    [2000, 'mass', 'kitchen', 'tenth-gram-scale', '2 g'],
    [277.7778, 'mass', 'laboratory', 'hundredth-gram-scale', '280 mg'],
    [55.5556, 'mass', 'laboratory', 'milligram-balance', '56 mg'],
    [20, 'mass', 'laboratory', 'milligram-balance', '20 mg'],
    [8.8235, 'mass', 'laboratory', 'analytical-balance', '8.8 mg'],
    // What a scale holds: beyond it the next one, which is coarser.
    [499_900, 'mass', 'kitchen', 'tenth-gram-scale', '499.9 g'],
    [500_100, 'mass', 'kitchen', 'kitchen-scale', '500 g'],
    [199_990, 'mass', 'kitchen', 'hundredth-gram-scale', '199.99 g'],
    [200_010, 'mass', 'kitchen', 'kitchen-scale', '200 g'],
    [49_999, 'mass', 'laboratory', 'milligram-balance', '49.999 g'],
    [50_001, 'mass', 'laboratory', 'kitchen-scale', '50 g'],
    [19_999.9, 'mass', 'laboratory', 'analytical-balance', '19.9999 g'],
    [20_000.1, 'mass', 'laboratory', 'kitchen-scale', '20 g'],
    [500, 'volume', 'kitchen', 'measuring-jug', '500 mL'],
    [125, 'volume', 'kitchen', 'weighed-water', '125 mL'],
    [62.5, 'volume', 'laboratory', 'cylinder', '62.5 mL'],
    [20, 'volume', 'kitchen', 'large-syringe', '20 mL'],
    [2.5, 'volume', 'kitchen', 'small-syringe', '2.5 mL'],
    [0.5, 'volume', 'kitchen', 'small-syringe', '0.5 mL'],
    [0.0625, 'volume', 'laboratory', 'micropipette', '63 µL'],
    [0.375, 'volume', 'laboratory', 'micropipette', '375 µL'],
    [12_000, 'volume', 'kitchen', 'measuring-jug', '12 L'],
  ] as const)('%s of %s in a %s is %s: %s', (amount, measures, bench, id, text) => {
    expect(best(amount, measures, bench)).toEqual([id, text]);
  });

  it('is filled again for what it does not hold at once', () => {
    const fillings = (mg: number) => measure(exact(mg), 'mass', 'kitchen');
    expect(fillings(5_000_000)).toMatchObject({ best: { fillings: 1 } });
    expect(fillings(5_000_001)).toMatchObject({ best: { fillings: 2 } });
  });

  it('may not be there, and then that is said', () => {
    expect(best(5, 'mass', 'kitchen')).toBe(
      '5 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.',
    );
    expect(best(0.5, 'mass', 'laboratory')).toContain('cannot be weighed on a balance that shows 0.1 mg');
    expect(best(0.05, 'volume', 'kitchen')).toContain('cannot be measured on a 1 mL syringe');
  });

  it('is too coarse for less: 5 mg cannot be weighed on a 0.1 g scale', () => {
    expect(tooCoarse(exact(5), tool('tenth-gram-scale'))).toBe(
      '5 mg cannot be weighed on a scale that shows 0.1 g: it takes 1 g or more.',
    );
    expect(tooCoarse(exact(1000), tool('tenth-gram-scale'))).toBeUndefined();
    expect(measureWith(exact(5), tool('tenth-gram-scale'))).toBeUndefined();
  });

  it('rounds to its step, by 5 % of a mass and 2.5 % of a volume at most', () => {
    const amount = fc.double({ min: 0.001, max: 1e7, noNaN: true });
    const kind = fc.constantFrom('mass' as const, 'volume' as const);
    fc.assert(fc.property(amount, kind, fc.constantFrom<Bench>('kitchen', 'laboratory'), (x, measures, bench) => {
      const found = measure(exact(x), measures, bench);
      if (!found.measurable) {
        expect(exact(x).lt(found.least)).toBe(true);
        return;
      }
      const { measured, error, tool: { step, most } } = found.best;
      expect(Math.abs(toNumber(error))).toBeLessThanOrEqual(measures === 'mass' ? 0.05 : 0.025);
      if (exact(x).lte(most)) expect(measured.div(step).d).toBe(1n);
    }));
  });

  it('exists for every amount between the least of the finest and the most of the largest', () => {
    for (const measures of ['mass', 'volume'] as const) {
      for (const bench of ['kitchen', 'laboratory'] as const) {
        const tools = [...toolsFor(measures, bench)].sort((a, b) => a.step.compare(b.step));
        for (const [i, finer] of tools.slice(0, -1).entries()) {
          expect(leastOf(tools[i + 1]!).lte(finer.most)).toBe(true);
        }
      }
    }
  });

  it('tells the least that it measures', () => {
    expect(leastText(tool('milligram-balance'))).toBe('10 mg');
    expect(leastText(tool('micropipette'))).toBe('20 µL');
  });
});
