import { describe, expect, test } from 'vitest';
import { printQuantity } from '../../server/src/model/quantity.ts';
import { factOf } from '../../server/src/model/record.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { parse } from '../../server/src/syntax/parse.ts';

function stock(facts: string) {
  const { record, problems } = parse(`stock G1 2026-01-09, ${facts}`);
  return { record: record!, codes: problems.map(({ code }) => code) };
}

describe('the purity of a powder', () => {
  test.each([
    ['purity 90 %', { percent: 90 }],
    ['purity 90 % acid', { percent: 90, form: 'acid' }],
    ['purity 75% Salt', { percent: 75, form: 'salt' }],
  ])('%s', (text, purity) => {
    const { record, codes } = stock(`GA3K 20 mg, ${text}, 18 mL`);
    expect(codes).toEqual([]);
    expect(factOf(record, 'purity')).toEqual({ type: 'purity', ...purity, start: 33, end: 33 + text.length });
  });

  test('of anything else than acid or salt is a mistake at that word', () => {
    const { problems } = parse('stock G1 2026-01-09, GA3 20 mg, purity 90 % powder, 18 mL');
    expect(problems.map(({ code, start, end }) => [code, start, end])).toEqual([['stray-text', 44, 50]]);
  });
});

describe('the day on which a powder was bought', () => {
  test('may be a month or a year', () => {
    const when = (text: string) => factOf(stock(`GA3 20 mg, 18 mL, bought ${text}`).record, 'bought')?.when.value;
    expect(when('2025-03')).toEqual({ first: dayOf(2025, 3, 1), last: dayOf(2025, 3, 31) });
    expect(when('2025')).toEqual({ first: dayOf(2025, 1, 1), last: dayOf(2025, 12, 31) });
  });

  test('must be there', () => {
    expect(stock('GA3 20 mg, 18 mL, bought').codes).toEqual(['bad-value']);
    expect(stock('GA3 20 mg, 18 mL, bought 2025-13').codes).toEqual(['impossible-date']);
  });
});

describe('the digits of a quantity', () => {
  test.each([
    ['20 mg', undefined], ['20.0 mg', 1], ['20.50 mg', 2], ['20.5 mg', undefined], ['100.000 mg', 3],
    [`1.${'0'.repeat(300)} mg`, undefined],
  ])('%s', (text, decimals) => {
    const mass = factOf(stock(`GA3 ${text}, 18 mL`).record, 'substance')?.mass?.value;
    expect(mass?.decimals).toBe(decimals);
  });

  test('are printed as they were written', () => {
    const mass = factOf(stock('GA3 20.50 mg, 18 mL').record, 'substance')!.mass!.value;
    expect(printQuantity(mass)).toBe('20.50 mg');
    expect(printQuantity({ value: 1, unit: 'days', decimals: 1 })).toBe('1.0 days');
  });
});
