import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { journalOf } from './helpers.ts';

function ppmOf(source: string, id: string) {
  const { agent, ppm, circular } = journalOf(source).solution(id)!;
  return [agent?.word, ppm.ok ? ppm.value.toFraction() : ppm.refusal.code, circular];
}

describe('a dilution', () => {
  test('is as strong as what it is made from makes it, through any number of steps', () => {
    // 10 mg in 10 mL is 1000 ppm (common practice), and each step halves it.
    const steps = Array.from({ length: 10 }, (_, n) => `dilute G${n + 1} 2026-01-09, from G${n} 1 mL, to 2 mL`);
    const source = [...steps, 'stock G0 2026-01-08, GA3 10 mg, 10 mL'].join('\n');
    expect(ppmOf(source, 'G1')).toEqual(['GA3', '500', false]);
    expect(ppmOf(source, 'G10')).toEqual(['GA3', '125/128', false]);
  });

  test('of a thousand steps is no harder', () => {
    const steps = Array.from({ length: 5000 }, (_, n) => `dilute G${n + 1} 2026-01-09, from G${n} 1 mL, to 1 mL`);
    expect(ppmOf(['stock G0 2026-01-08, GA3 10 mg, 10 mL', ...steps].join('\n'), 'G5000')).toEqual(['GA3', '1000', false]);
  });

  test('of nothing that is there has no strength', () => {
    expect(ppmOf('dilute G2 2026-01-09, from G1 1 mL, to 2 mL', 'G2')).toEqual([undefined, 'unknown-stock', false]);
    expect(ppmOf('lot G1 Veratrum\ndilute G2 2026-01-09, from G1 1 mL, to 2 mL', 'G2')).toEqual([undefined, 'unknown-stock', false]);
    expect(journalOf('lot G1 Veratrum').solution('G1')).toBe(undefined);
  });

  test('of a bottle that is defined twice has none, unless both say the same', () => {
    // 1000 ppm in January, 2000 ppm under the same name in March: nobody knows which one was diluted.
    const bottle = 'stock G1 2026-01-08, GA3 10 mg, 10 mL\n';
    const other = 'stock G1 2026-03-01, GA3 20 mg, 10 mL\n';
    const weaker = 'dilute G2 2026-03-09, from G1 1 mL, to 2 mL\n';
    expect(ppmOf(bottle + other + weaker, 'G1')).toEqual(['GA3', 'unread', false]);
    expect(ppmOf(bottle + other + weaker, 'G2')).toEqual(['GA3', 'unread', false]);
    expect(ppmOf(bottle + bottle + weaker, 'G2')).toEqual(['GA3', '500', false]);
    const packets = 'powder P1 2026-01-01, GA3 1 g\npowder P1 2026-02-01, GA3 1 g, purity 50 %\nstock G3 2026-03-01, from P1 10 mg, 10 mL';
    expect(ppmOf(packets, 'G3')).toEqual(['GA3', 'unread', false]);
    expect(ppmOf(`${packets}, purity 50 %`, 'G3')).toEqual(['GA3', '500', false]);
  });

  test('of which more is taken than made has none', () => {
    expect(ppmOf('stock G1 2026-01-08, GA3 10 mg, 10 mL\ndilute G2 2026-01-09, from G1 3 mL, to 2 mL', 'G2')).toEqual(['GA3', 'more-than-made', false]);
  });

  test('in a circle has none; what is made from such a one neither, without being in the circle', () => {
    const source = `
      dilute G1 2026-01-09, from G3 1 mL, to 2 mL
      dilute G2 2026-01-09, from G1 1 mL, to 2 mL
      dilute G3 2026-01-09, from G2 1 mL, to 2 mL
      dilute G4 2026-01-09, from G3 1 mL, to 2 mL
      dilute G5 2026-01-09, from G5 1 mL, to 2 mL
    `;
    for (const id of ['G1', 'G2', 'G3', 'G5']) expect(ppmOf(source, id)).toEqual([undefined, 'no-strength', true]);
    expect(ppmOf(source, 'G4')).toEqual([undefined, 'no-strength', false]);
  });

  test('says the same whichever is asked first', () => {
    const ids = ['G1', 'G2', 'G3', 'G4', 'S'];
    const source = fc.constantFrom(...ids);
    const sources = fc.tuple(source, source, source, source);
    fc.assert(fc.property(sources, fc.shuffledSubarray(ids, { minLength: 5 }), (from, order) => {
      const lines = from.map((stock, n) => `dilute G${n + 1} 2026-01-09, from ${stock} 1 mL, to 2 mL`);
      const journal = journalOf(['stock S 2026-01-08, GA3 10 mg, 10 mL', ...lines].join('\n'));
      const told = order.map(id => [id, journal.solution(id)!.circular, journal.solution(id)!.ppm]);
      const other = journalOf(['stock S 2026-01-08, GA3 10 mg, 10 mL', ...lines].join('\n'));
      expect(new Map(told.map(([id, ...rest]) => [id, rest]))).toEqual(
        new Map(ids.map(id => [id, [other.solution(id)!.circular, other.solution(id)!.ppm]])));
    }), { numRuns: 100 });
  });
});
