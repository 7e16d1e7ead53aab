import { describe, expect, it } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const lot = 'lot PAR-26 Paris polyphylla, 16 seeds\n';
const next = (source: string, now = '2026-02-01') => dueOf(lot + source, now, 'count');

describe('the next count', () => {
  it('is due a week after the sowing, then a week after the last count', () => {
    expect(next('sow PAR-26 2026-01-11')).toEqual(['overdue: 2026-01-18 count PAR-26']);
    expect(next('sow PAR-26 2026-01-11\ncount PAR-26 2026-01-28, 0')).toEqual(['this week: 2026-02-04 count PAR-26']);
    expect(next('count PAR-26 2026-01-28, 0\ncount PAR-26 2026-01-20, 0\nsow PAR-26 2026-01-11')).toEqual(['this week: 2026-02-04 count PAR-26']);
  });

  it('follows the interval of the journal, and that for the plant', () => {
    expect(next('limit count, 10 days\nsow PAR-26 2026-01-30')).toEqual(['later: 2026-02-09 count PAR-26']);
    expect(next('limit count, 10 days\nlimit count, 2 days, for Paris\nsow PAR-26 2026-01-30')).toEqual(['today: 2026-02-01 count PAR-26']);
    expect(next('limit count, 1 month\nsow PAR-26 2026-01-31')).toEqual(['later: 2026-02-28 count PAR-26']);
  });

  it('is due in the cold as in the warm, a week after the batch was put there', () => {
    expect(next('sow PAR-26 2026-01-11\nchill PAR-26 2026-01-27, 4 C, 14 weeks')).toEqual(['this week: 2026-02-03 count PAR-26']);
  });

  it('asks for a count without numbers', () => {
    expect(itemsOf(`${lot}sow PAR-26 2026-01-11`, '2026-02-01', 'count')[0]).toMatchObject({
      what: 'count; last looked at on 2026-01-11 (sow)', action: 'count PAR-26 2026-02-01, ',
    });
    expect(itemsOf(`${lot}sow PAR-26 2026-01-30`, '2026-02-01', 'count')[0]?.action).toBe('count PAR-26 2026-02-06, ');
    expect(itemsOf(`${lot}sow PAR-26 2026-01-11`, '2026-02-01 10:00', 'count')[0]?.action).toBe('count PAR-26 2026-02-01, ');
  });

  it('is not due for seed that was never sown, was closed, or was given out', () => {
    expect(next('soak PAR-26 2026-01-11 19:00, water, 24 h')).toEqual([]);
    expect(next('sow PAR-26 2026-01-11\ndiscard PAR-26 2026-01-20, soft')).toEqual([]);
    expect(next('sow PAR-26 2026-01-11\nsplit PAR-26 2026-01-20, A 8 seeds, B 8 seeds')).toEqual([
      'overdue: 2026-01-18 count PAR-26/A', 'overdue: 2026-01-18 count PAR-26/B',
    ]);
  });

  it('is not due where every seed is accounted for', () => {
    expect(next('sow PAR-26 2026-01-11\ncount PAR-26 2026-01-18, 10, 5 rotted')).toHaveLength(1);
    expect(next('sow PAR-26 2026-01-11\ncount PAR-26 2026-01-18, 10, 5 rotted, 1 lost')).toEqual([]);
  });

  it('stays due where the number of seeds is not known', () => {
    expect(dueOf('lot X Iris alba\nsow X 2026-01-11\ncount X 2026-01-28, 30', '2026-02-01')).toEqual(['this week: 2026-02-04 count X']);
  });

  it('is due on in a regime until the seedlings are up', () => {
    const source = `regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks
sow PAR-26 2026-01-11, regime woodland
count PAR-26 2026-01-28, 15, 1 rotted
`;
    expect(next(source)).toEqual(['this week: 2026-02-04 count PAR-26']);
    expect(next(`${source}count PAR-26 2026-01-29, 14 emerged, 1 died`)).toEqual([]);
  });
});
