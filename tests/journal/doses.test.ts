import { describe, expect, test } from 'vitest';
import { batchOf } from './helpers.ts';

/** Agent, stock and ppm of each dose of the last soak; ppm as a fraction. */
function doses(source: string) {
  const { soaks } = batchOf(`lot VER-24 Veratrum nigrum, 60 seeds\n${source.trim().replace(/^ +/gm, '')}`);
  return soaks.at(-1)!.doses.map(({ agent, stock, ppm }) =>
    [agent?.word, stock, ppm.ok ? ppm.value.toFraction() : ppm.refusal.code]);
}

describe('the doses of a soak', () => {
  test('are what is written, several in one', () => {
    expect(doses('soak VER-24 2026-01-10, GA3 500 ppm, KNO3 0.2 %, water')).toEqual([
      ['GA3', undefined, '500'], ['KNO3', undefined, '2000'], ['water', undefined, 'no-strength'],
    ]);
  });

  test('have no strength where nobody measured, or wrote none', () => {
    expect(doses('soak VER-24 2026-01-10, GA3 unmeasured')).toEqual([['GA3', undefined, 'unmeasured']]);
    expect(doses('soak VER-24 2026-01-10, GA3')).toEqual([['GA3', undefined, 'no-strength']]);
    expect(doses('soak VER-24 2026-01-10, G9 10 mL')).toEqual([[undefined, undefined, 'unknown-stock']]);
  });

  test('from a stock have the true strength of the stock', () => {
    // 20 mg, 90 % pure, in 18 mL is 1000 ppm; one to two is 500 ppm.
    const stocks = 'stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL\ndilute G2 2026-01-09, from G1 10 mL, to 20 mL\n';
    expect(doses(`${stocks}soak VER-24 2026-01-10, G2 10 mL, 24 h`)).toEqual([['GA3', 'G2', '500']]);
    expect(doses(`${stocks}soak VER-24 2026-01-10, G1 10 mL, G2 10 mL`)).toEqual([['GA3', 'G1', '1000'], ['GA3', 'G2', '500']]);
  });

  test('may be of agents that the journal declares', () => {
    expect(doses('agent kelp, seaweed\nsoak VER-24 2026-01-10, kelp 2 g/L')).toEqual([['kelp', undefined, '2000']]);
  });

  test('of drops on seedlings are kept with them', () => {
    const { events } = batchOf('lot VER-24 Veratrum\napply VER-24 2026-04-02, GA3 100 ppm, 2 drops');
    expect(events[0]).toMatchObject({ type: 'apply', doses: [{ agent: { word: 'GA3' } }] });
  });
});
