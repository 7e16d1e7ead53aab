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

  it('is not due for seed that lies dry or was only soaked, was closed, or was given out', () => {
    expect(next('')).toEqual([]);
    expect(next('move PAR-26 2026-01-11, at tin 2 slot 1')).toEqual([]);
    expect(next('soak PAR-26 2026-01-11 19:00, water, 24 h')).toEqual([]);
    expect(next('soak PAR-26 2026-01-11 19:00, water, 24 h\nlift PAR-26 2026-01-12 19:00')).toEqual([]);
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

describe('the next count of seed in a damp towel, which nobody writes as sown', () => {
  const chilled = 'chill PAR-26 2026-01-04, 4 C, 14 weeks, at bag 3 slot 1\n';

  it('is not due in the cold before somebody counted, and then a week after each count', () => {
    expect(next(chilled)).toEqual([]);
    expect(next(chilled, '2026-06-01')).toEqual([]);
    expect(next(`${chilled}count PAR-26 2026-01-18, 0`)).toEqual(['overdue: 2026-01-25 count PAR-26']);
    expect(next(`${chilled}count PAR-26 2026-01-18, 0\ncount PAR-26 2026-01-28, 2`)).toEqual(['this week: 2026-02-04 count PAR-26']);
    // In the cold past its end, as before.
    expect(next(`${chilled}count PAR-26 2026-01-18, 0`, '2026-06-01')).toEqual(['overdue: 2026-01-25 count PAR-26']);
  });

  it('is due from the start in the warm, where seed can germinate any day', () => {
    expect(next('warm PAR-26 2026-01-27, 20 C')).toEqual(['this week: 2026-02-03 count PAR-26']);
    expect(next(`${chilled}warm PAR-26 2026-01-27, 20 C`)).toEqual(['this week: 2026-02-03 count PAR-26']);
    expect(next('warm PAR-26 2026-01-04, 20 C\nchill PAR-26 2026-01-27, 4 C')).toEqual([]);
  });

  it('goes by the interval of the journal', () => {
    expect(next(`limit count, 14 days\n${chilled}count PAR-26 2026-01-18, 0`)).toEqual(['today: 2026-02-01 count PAR-26']);
  });

  it('is due in a towel without a stage too, where it was counted since its soak', () => {
    const soaked = 'soak PAR-26 2026-01-11 19:00, water, 24 h\n';
    const lifted = `${soaked}lift PAR-26 2026-01-12 19:00\n`;
    expect(next(`${lifted}count PAR-26 2026-01-28, 1`)).toEqual(['this week: 2026-02-04 count PAR-26']);
    // What was counted of the dry seed says nothing of what comes up.
    expect(next(`count PAR-26 2026-01-05, 1 lost\n${lifted}`)).toEqual([]);
    // What lies in the water is to be lifted.
    expect(next(`${soaked}count PAR-26 2026-01-11 21:00, 1`, '2026-01-12 08:00')).toEqual([]);
  });

  it('is due on the day that the grower names, outdoors too', () => {
    const out = `${chilled}move PAR-26 2026-01-20, at cold frame, outdoors`;
    expect(next(out)).toEqual([]);
    expect(next(`${out}, look again 2026-03-01`)).toEqual(['later: 2026-03-01 count PAR-26']);
    expect(next(`${out}\ncount PAR-26 2026-01-28, 0`)).toEqual([]);
    expect(next(`${chilled}count PAR-26 2026-01-28, 0, look again 2026-03-01`)).toEqual(['later: 2026-03-01 count PAR-26']);
  });

  it('ends when every seed is accounted for and the seedlings are up, potted or gone', () => {
    const all = `${chilled}count PAR-26 2026-01-28, 12, 3 rotted, 1 lost\n`;
    expect(next(all)).toEqual(['this week: 2026-02-04 count PAR-26']);
    expect(next(`${all}count PAR-26 2026-01-29, 12 emerged`)).toEqual([]);
    expect(next(`${all}pot PAR-26 2026-01-29, 12 seedlings`)).toEqual([]);
    for (const end of ['discard PAR-26 2026-01-29, soft', 'give PAR-26 2026-01-29, to a friend', 'cut PAR-26 2026-01-29, 0 fresh']) {
      expect(next(all + end), end).toEqual([]);
    }
    expect(next(`${chilled}count PAR-26 2026-01-28, 16 rotted`)).toEqual([]);
  });

  it('goes over to what it is sown in, and to the parts that it is split into', () => {
    const counted = `${chilled}count PAR-26 2026-01-18, 0\n`;
    expect(next(`${counted}sow PAR-26 2026-01-30, in grit`)).toEqual(['this week: 2026-02-06 count PAR-26']);
    expect(next(`${counted}split PAR-26 2026-01-20, A 10 seeds`)).toEqual([
      'overdue: 2026-01-25 count PAR-26', 'overdue: 2026-01-25 count PAR-26/A',
    ]);
  });

  it('keeps its key from count to count', () => {
    const key = (more: string) => itemsOf(`${lot}${chilled}${more}`, '2026-03-01', 'count').map(each => each.key);
    expect(key('count PAR-26 2026-01-18, 0')).toEqual(['count/PAR-26/2026-01-04']);
    expect(key('count PAR-26 2026-01-18, 0\ncount PAR-26 2026-01-28, 2')).toEqual(['count/PAR-26/2026-01-04']);
  });
});
