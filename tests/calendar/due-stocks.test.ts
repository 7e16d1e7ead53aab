import { describe, expect, it } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const stock = 'stock G1 2026-01-09, GA3 20 mg, 20 mL, keeps 1 year, at fridge door\n';

describe('a stock', () => {
  it('is due on its last good day and overdue after it', () => {
    expect(dueOf(stock, '2026-06-01')).toEqual(['later: 2027-01-09 stock G1']);
    expect(dueOf(stock, '2027-01-09')).toEqual(['today: 2027-01-09 stock G1']);
    expect(dueOf(stock, '2027-01-10')).toEqual(['overdue: 2027-01-09 stock G1']);
    expect(itemsOf(stock, '2027-01-10 10:00')[0]?.action).toBe('note G1 2027-01-10, thrown away');
  });

  it('keeps for the limit of the journal where it says nothing itself, made on a leap day too', () => {
    expect(dueOf('stock G1 2028-02-29, GA3 20 mg, 20 mL\nlimit stock, 1 year', '2028-03-01')).toEqual(['later: 2029-02-28 stock G1']);
    expect(dueOf('stock G1 2028-02-29, GA3 20 mg, 20 mL', '2028-03-01')).toEqual(['later: 2032-02-29 stock G1']);
  });

  it('is done when a note is dated on its last good day or later', () => {
    expect(dueOf(`${stock}note G1 2027-01-08, clear`, '2027-02-01')).toHaveLength(1);
    expect(dueOf(`${stock}note G1 2027-01-09, thrown away`, '2027-02-01')).toEqual([]);
    expect(dueOf(`${stock}note G1 2027-01-09, still clear`, '2027-02-01')).toEqual([]);
    expect(dueOf(`${stock}note G1 2027-02-02, still clear`, '2027-02-01')).toHaveLength(1);
  });

  it('is not done by a note on something else, nor by another record', () => {
    const other = 'stock G2 2026-01-09, GA3 20 mg, 20 mL, keeps 9 years\nlot A Iris, 5 seeds\n';
    expect(dueOf(`${stock}${other}note G2 2027-01-20, clear`, '2027-02-01', 'stock')).toContain('overdue: 2027-01-09 stock G1');
    expect(dueOf(`${stock}${other}soak A 2027-01-20 10:00, G1 1 mL, 2 h\nlift A 2027-01-20 12:00`, '2027-02-01', 'stock'))
      .toContain('overdue: 2027-01-09 stock G1');
  });

  it('says until when it is good, and whether to replace it then or now', () => {
    const said = (now: string) => itemsOf(stock, now).map(({ what }) => what);
    expect(said('2027-01-09')).toEqual(['good until 2027-01-09; replace it then']);
    expect(said('2027-01-10')).toEqual(['was good until 2027-01-09; replace it now']);
  });

  it('owes nothing where nobody knows how long it keeps, or when it was made', () => {
    expect(dueOf('stock G1, GA3 20 mg, 20 mL, keeps 1 year', '2030-01-01', 'stock')).toEqual([]);
  });

  it('is not due when it is used up, or not yet made', () => {
    const used = 'lot A Iris alba, 10 seeds\nsow A 2026-01-09\n';
    expect(dueOf(`${stock}${used}apply A 2026-02-01, G1 19.9 mL`, '2027-02-01', 'stock')).toHaveLength(1);
    expect(dueOf(`${stock}${used}apply A 2026-02-01, G1 20 mL`, '2027-02-01', 'stock')).toEqual([]);
    expect(dueOf(`${stock}note G1 2026-06-01, thrown away`, '2027-02-01', 'stock')).toEqual([]);
    expect(dueOf(`${stock}note G1 2026-06-01, half empty`, '2027-02-01', 'stock')).toHaveLength(1);
    expect(dueOf(stock, '2026-01-08')).toEqual([]);
  });
});
