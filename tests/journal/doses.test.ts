import { describe, expect, test } from 'vitest';
import { isoOf } from '../../server/src/model/day.ts';
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
    // Half of the one, half of the other: (1000 + 500) / 2.
    expect(doses(`${stocks}soak VER-24 2026-01-10, G1 10 mL, G2 10 mL`)).toEqual([['GA3', undefined, '750']]);
  });

  test('are not known where two strengths of one agent disagree', () => {
    expect(doses('soak VER-24 2026-01-10, GA3 500 ppm, GA3 600 ppm')).toEqual([['GA3', undefined, 'said-twice']]);
    expect(doses('soak VER-24 2026-01-10, GA3 500 ppm, GA3 0.05 %')).toEqual([['GA3', undefined, '500']]);
    const stock = 'stock G1 2026-01-09, GA3 20 mg, 20 mL\n';
    expect(doses(`${stock}soak VER-24 2026-01-10, G1 10 mL, GA3 400 ppm`).map(([agent, , ppm]) => [agent, ppm])).toEqual([['GA3', 'said-twice']]);
  });

  test('tell of all stocks that were past their time the oldest', () => {
    const stocks = ['A 2018', 'B 2016', 'C 2017'].map(each => `stock ${each}-01-09, GA3 20 mg, 20 mL`).join('\n');
    const { soaks } = batchOf(`lot VER-24 Veratrum nigrum\n${stocks}\nsoak VER-24 2026-01-10, A 5 mL, B 5 mL, C 5 mL`);
    expect(isoOf(soaks[0]!.doses[0]!.stale!.made)).toBe('2016-01-09');
  });

  test('may be of agents that the journal declares', () => {
    expect(doses('agent kelp, seaweed\nsoak VER-24 2026-01-10, kelp 2 g/L')).toEqual([['kelp', undefined, '2000']]);
  });

  test('of drops on seedlings are kept with them', () => {
    const { events } = batchOf('lot VER-24 Veratrum\napply VER-24 2026-04-02, GA3 100 ppm, 2 drops');
    expect(events[0]).toMatchObject({ type: 'apply', doses: [{ agent: { word: 'GA3' } }] });
  });
});

describe('what is poured together', () => {
  const stocks = [
    // 1000 ppm; one to two 500 ppm; 2000 ppm of nitrate.
    'stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL', 'dilute G2 2026-01-09, from G1 10 mL, to 20 mL',
    'stock KN 2026-01-09, KNO3 1 g, 500 mL', 'stock GK 2026-01-09, GA3K 20 mg, 20 mL', '',
  ].join('\n');
  const mixed = (liquid: string) => doses(`${stocks}soak VER-24 2026-01-10, ${liquid}, 24 h`)
    .map(([agent, stock, ppm]) => `${agent ?? '?'} ${ppm ?? ''}${stock === undefined ? '' : ` ${stock}`}`);

  test.each<[liquid: string, doses: string[], why: string]>([
    ['G2 5 mL, 20 mL', ['GA3 125 G2'], '500 * 5 / 20'],
    ['G2 5 mL, water 5 mL', ['GA3 250 G2', 'water no-strength'], '500 * 5 / 10'],
    ['G2 5 mL, KN 2 mL', ['GA3 2500/7 G2', 'KNO3 4000/7 KN'], '357 and 571: 500 * 5 / 7, 2000 * 2 / 7'],
    ['G2 5 mL, KN 2 mL, 20 mL', ['GA3 125 G2', 'KNO3 200 KN'], '500 * 5 / 20, 2000 * 2 / 20'],
    ['G2 5 mL, KN 2000 uL, 0.02 L', ['GA3 125 G2', 'KNO3 200 KN'], 'the same in other units'],
    ['G2 20 mL, 20 mL', ['GA3 500 G2'], 'nothing but the stock'],
    ['G2 5 mL', ['GA3 500 G2'], 'nothing but the stock'],
    ['G2', ['GA3 500 G2'], 'nothing but the stock'],
    ['G2 500 ppm', ['GA3 500 G2'], 'both say the same'],
    ['G2 480 ppm', ['GA3 500 G2'], 'nobody measures closer than 5 %'],
    ['G2 100 ppm', ['GA3 beside-stock G2'], 'the stock says 500, the record 100'],
    ['G2 100 ppm 5 mL, 20 mL', ['GA3 beside-stock G2'], 'the stock says 125, the record 100'],
    ['G2 10 mg, 20 mL', ['GA3 beside-stock G2'], 'a mass is no part of a liquid'],
    ['G2 unmeasured, 20 mL', ['GA3 beside-stock G2'], 'how much of it is not known'],
    ['G1 5 mL, G2 5 mL', ['GA3 750'], '(1000 * 5 + 500 * 5) / 10: one agent from two bottles'],
    ['G1 5 mL, G2 5 mL, 40 mL', ['GA3 375/2'], '(1000 * 5 + 500 * 5) / 40 = 187.5'],
    ['G1 5 mL, GK 5 mL', ['GA3 500 G1', 'GA3K 500 GK'], 'acid and salt are two agents'],
    ['G2 5 mL, KNO3 0.2 %, 20 mL', ['GA3 125 G2', 'KNO3 2000'], 'a strength without a volume is that of the dish'],
    ['GA3 500 ppm, 20 mL', ['GA3 500'], 'as before'],
    ['GA3 500 ppm, KNO3 0.2 %, water 30 mL', ['GA3 500', 'KNO3 2000', 'water no-strength'], 'as before'],
    ['peroxide 3 % 5 mL, water 5 mL', ['peroxide 15000', 'water no-strength'], '30000 * 5 / 10'],
    ['peroxide 3 % 5 mL', ['peroxide 30000'], 'nothing but what was bought'],
    ['smoke 100 % 2 mL, 20 mL', ['smoke 100000'], 'one part in ten'],
    ['smoke 2 mL, 20 mL', ['smoke no-strength'], 'of what strength is not written'],
    ['G2 5 mL, GA3 0 ppm', ['GA3 said-twice'], '500 ppm from the stock, 0 as written'],
    ['GA3 0 ppm, 20 mL', ['GA3 0'], 'the lowest rung'],
    ['GA3 125 ppm, G2 5 mL, 20 mL', ['GA3 125'], 'both say the same'],
    ['GA3 unmeasured, G2 5 mL, 20 mL', ['GA3 unmeasured'], 'nobody measured a part of it'],
    ['G2 5 mL, G9 5 mL', ['GA3 250 G2', '? unknown-stock'], 'a bottle of which there is no record takes room all the same'],
    ['G2 5 mL, water 10 mL, 12 mL', ['GA3 more-than-made G2', 'water no-strength'], 'cannot be'],
    ['G2, 20 mL', ['GA3 no-volume G2'], 'how much of it is asked'],
    ['G2, KN 5 mL, 20 mL', ['GA3 no-volume G2', 'KNO3 500 KN'], '2000 * 5 / 20; of the other it is asked'],
    ['G2, KN 5 mL', ['GA3 no-volume G2', 'KNO3 no-volume KN'], 'neither is known'],
    ['G2 5 mL, water', ['GA3 no-volume G2', 'water no-strength'], 'how much water is asked'],
    ['G2 5 mL, water, 20 mL', ['GA3 125 G2', 'water no-strength'], 'the rest is water'],
  ])('%s', (liquid, expected) => {
    expect(mixed(liquid)).toEqual(expected);
  });

  test('is not told from a line with a mistake, where a volume may be missing', () => {
    expect(mixed('G2 5 mL, water 5 mm')).toEqual(['GA3 unread G2']);
    expect(mixed('GA3 500 ppm, water 5 mm')).toEqual(['GA3 500']);
  });

  test('may be diluted before: 500 ppm, 1 to 5 and 1 to 4 are 25 ppm', () => {
    expect(doses(`${stocks}dilute G3 2026-01-09, from G2 10 mL, to 50 mL\nsoak VER-24 2026-01-10, G3 5 mL, 20 mL`)).toEqual([['GA3', 'G3', '25']]);
  });

  test('holds for drops; their volume is what was used of the only stock', () => {
    const drops = (facts: string) => batchOf(`lot VER-24 Veratrum\n${stocks}apply VER-24 2026-04-02, ${facts}, 4 seedlings`).events
      .flatMap(event => (event.type === 'apply' ? event.doses.map(({ ppm }) => (ppm.ok ? ppm.value.toFraction() : ppm.refusal.code)) : []));
    expect(drops('G2, 5 mL')).toEqual(['500']);
    expect(drops('G2 1 mL, water 4 mL')).toEqual(['100', 'no-strength']);
    expect(drops('G2 1 mL, 5 mL')).toEqual(['100']);
  });
});
