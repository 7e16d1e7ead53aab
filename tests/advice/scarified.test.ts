/** Seed with a hard coat: what was not scarified says nothing of what was. */
import { describe, expect, test } from 'vitest';
import { answerOn, pageOn } from './helpers.ts';

describe('seed with a hard coat', () => {
  const source = (c: string, year = 2024) => `
    lot BAP-23 Baptisia australis, 60 seeds, collected 2023-09, dormancy PY
    split BAP-23, A 20 seeds, B 20 seeds, C 20 seeds
    scarify BAP-23/A ${year}-01-10 17:00, filed
    soak BAP-23/A ${year}-01-10 19:00, water, 24 h
    ${c}
    soak BAP-23/C ${year}-01-10 19:00, GA3 500 ppm, 24 h
    soak BAP-23/B ${year}-01-10 19:00, water, 24 h
    sow BAP-23/A ${year}-01-11 19:00
    sow BAP-23/B ${year}-01-11 19:00
    sow BAP-23/C ${year}-01-11 19:00
    count BAP-23/A ${year}-01-20, 17
    count BAP-23/B ${year}-01-20, 2
    count BAP-23/C ${year}-01-20, 17
    lot NEW-26 Baptisia australis, 30 seeds
  `;

  test('is left untreated where it germinated well and soon once it was scarified, whatever seed with a whole coat did', () => {
    const scarified = source('scarify BAP-23/C 2024-01-10 17:00, filed');
    expect(answerOn(scarified)).toBe(
      'Leave it untreated: untreated seed of Baptisia australis germinated well and soon in your own records, after scarification.');
  });

  test('may be tried where untreated seed that was scarified did badly elsewhere, and the reason says so', () => {
    const other = `
      lot BAP-22 Baptisia australis, 60 seeds
      scarify BAP-22 2023-01-10 17:00, filed
      sow BAP-22 2023-01-11
      count BAP-22 2023-03-11, 3
    `;
    expect(answerOn(`${source('scarify BAP-23/C 2024-01-10 17:00, filed')}\n${other}`)).toMatch(
      /^Try GA3 500 ppm, 24 h: untreated seed beside it germinated well, after scarification, but not all of your untreated seed did\. /);
  });

  test('is scarified before a soak that it paid on', () => {
    const paid = source('scarify BAP-23/C 2024-01-10 17:00, filed').replace('count BAP-23/A 2024-01-20, 17', 'count BAP-23/A 2024-01-20, 4')
      .replace('lot NEW', 'discard BAP-23/A 2024-06-01\n    discard BAP-23/C 2024-06-01\n    lot NEW');
    expect(answerOn(paid)).toMatch(/^Treat most of it: GA3 500 ppm, 24 h\. It paid in one lot, after scarification\. /);
    const { 'How to divide it': divided, 'Records to write': records } = pageOn(paid);
    expect(divided).toContain('Your records put the soak after scarification. Give that to both parts first, and begin the soak then.');
    expect(records!.join()).not.toContain('soak');
  });
});
