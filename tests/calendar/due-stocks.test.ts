import { describe, expect, it } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const stock = 'stock G1 2026-01-09, GA3 20 mg, 20 mL, keeps 1 year, at fridge door\n';

describe('a stock', () => {
  it('is due on its last good day and overdue after it', () => {
    expect(dueOf(stock, '2026-06-01')).toEqual(['later: 2027-01-09 stock G1']);
    expect(dueOf(stock, '2027-01-09')).toEqual(['today: 2027-01-09 stock G1']);
    expect(dueOf(stock, '2027-01-10')).toEqual(['overdue: 2027-01-09 stock G1']);
    expect(itemsOf(stock, '2027-01-10')[0]?.action).toBe('note G1 2027-01-10, thrown away');
  });

  it('keeps for the limit of the journal where it says nothing itself, made on a leap day too', () => {
    expect(dueOf('stock G1 2028-02-29, GA3 20 mg, 20 mL\nlimit stock, 1 year', '2028-03-01')).toEqual(['later: 2029-02-28 stock G1']);
    expect(dueOf('stock G1 2028-02-29, GA3 20 mg, 20 mL', '2028-03-01')).toEqual(['later: 2032-02-29 stock G1']);
  });

  it('is done when a note is dated on its last good day or later', () => {
    expect(dueOf(`${stock}note G1 2027-01-08, clear`, '2027-02-01')).toHaveLength(1);
    expect(dueOf(`${stock}note G1 2027-01-09, thrown away`, '2027-02-01')).toEqual([]);
  });

  it('is not due when it is used up, or not yet made', () => {
    const used = 'lot A Iris alba, 10 seeds\nsow A 2026-01-09\n';
    expect(dueOf(`${stock}${used}apply A 2026-02-01, G1 19.9 mL`, '2027-02-01', 'stock')).toHaveLength(1);
    expect(dueOf(`${stock}${used}apply A 2026-02-01, G1 20 mL`, '2027-02-01', 'stock')).toEqual([]);
    expect(dueOf(stock, '2026-01-08')).toEqual([]);
  });
});
