/** Mixing conserves mass: checked with whole numbers (BigInt), which share no code with what is tested. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { exact, type Exact } from '../../server/src/solutions/amounts.ts';
import { dishOf } from '../../server/src/solutions/dish.ts';

const text = ({ ok, ...outcome }: ReturnType<typeof dishOf>['shares'][number]) =>
  (ok && 'value' in outcome ? outcome.value.toFraction() : 'refusal' in outcome ? outcome.refusal.code : '');

function dish(pours: readonly (number | 'open' | 'water')[], total?: number) {
  const { shares, ...rest } = dishOf(pours.map(ml => ({
    ml: typeof ml === 'number' ? exact(ml) : undefined, isWater: ml === 'water',
  })), total === undefined ? undefined : exact(total));
  return [shares.map(text).join(' '), rest.totalMl?.toFraction(), rest.fillMl?.toFraction(), rest.issue];
}

describe('what is poured into a dish', () => {
  test.each<[pours: (number | 'open' | 'water')[], total: number | undefined, expected: ReturnType<typeof dish>]>([
    [[5], 20, ['1/4', '20', '15', undefined]],
    [[5, 5], undefined, ['1/2 1/2', '10', '0', undefined]],
    [[5, 2], undefined, ['5/7 2/7', '7', '0', undefined]],
    [[5], undefined, ['1', '5', '0', undefined]],
    [[5, 15], 20, ['1/4 3/4', '20', '0', undefined]],
    [[5, 15.001], 20, ['more-than-made more-than-made', undefined, undefined, 'total-below-parts']],
    [['open'], undefined, ['1', undefined, undefined, undefined]],
    [['open'], 20, ['no-volume', '20', undefined, 'no-volume']],
    [['open', 5], 20, ['no-volume 1/4', '20', undefined, 'no-volume']],
    [['open', 5], undefined, ['no-volume no-volume', undefined, undefined, 'no-volume']],
    [['open', 'water'], undefined, ['no-volume no-volume', undefined, undefined, 'no-volume']],
    [[5, 'water'], undefined, ['no-volume no-volume', undefined, undefined, 'no-volume']],
    [[5, 'water'], 20, ['1/4 no-volume', '20', '15', undefined]],
    [['water'], undefined, ['no-volume', undefined, undefined, undefined]],
    [[], 20, ['', '20', '20', undefined]],
    [[], undefined, ['', undefined, undefined, undefined]],
  ])('%j in %s', (pours, total, expected) => {
    expect(dish(pours, total)).toEqual(expected);
  });
});

/** A volume of so many uL in one of the units that a journal may have. */
function written(ul: number, unit: 'L' | 'mL' | 'uL'): string {
  const places = { L: 6, mL: 3, uL: 0 }[unit];
  const digits = String(ul).padStart(places + 1, '0');
  const at = digits.length - places;
  return `${digits.slice(0, at)}${places > 0 ? `.${digits.slice(at)}` : ''} ${unit}`;
}

const unit = fc.constantFrom('L' as const, 'mL' as const, 'uL' as const);
/** uL; ppm of a stock, which is made of as many mg of pure powder in a litre. */
const pour = fc.record({ ul: fc.integer({ min: 1, max: 2_000_000 }), ppm: fc.integer({ min: 1, max: 4000 }), unit });

test('keeps the mass of every agent, whatever is poured, in whatever units, with or without a total', () => {
  fc.assert(fc.property(
    fc.array(pour, { minLength: 1, maxLength: 5 }), fc.option(pour),
    fc.option(fc.integer({ min: 0, max: 5_000_000 })), unit,
    (pours, water, spare, totalUnit) => {
      const poured = pours.reduce((sum, { ul }) => sum + ul, 0) + (water?.ul ?? 0);
      const total = poured + (spare ?? 0);
      const stocks = pours.map(({ ppm }, n) => `stock S${n} 2026-01-01, GA3 ${ppm} mg, 1 L`);
      const facts = [
        ...pours.map((each, n) => `S${n} ${written(each.ul, each.unit)}`), ...(water ? [`water ${written(water.ul, water.unit)}`] : []),
        ...(spare === null ? [] : [written(total, totalUnit)]),
      ];
      const journal = new Journal();
      journal.set('j.germ', ['lot L Iris', ...stocks, `soak L 2026-01-02, ${facts.join(', ')}`, ''].join('\n'));
      const { ppm } = journal.lot('L')!.root.soaks[0]!.doses[0]!;
      // ppm * total = sum of ppm * volume, as whole numbers.
      const mass = pours.reduce((sum, each) => sum + BigInt(each.ppm) * BigInt(each.ul), 0n);
      expect(ppm.ok && ppm.value.n * BigInt(total) === mass * ppm.value.d).toBe(true);
      const drawn = pours.map((_, n) => (journal.drawsFrom(`S${n}`)[0]!.amount as Exact).mul(1000).toFraction());
      expect(drawn).toEqual(pours.map(({ ul }) => String(ul)));
    },
  ), { numRuns: 60 });
});
