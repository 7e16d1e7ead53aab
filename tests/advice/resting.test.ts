/** What the advice may rest on: scarified seed by itself, and trials that nothing rests on are named. */
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

describe('a trial that nothing rests on', () => {
  const source = (medium: string, count = '20') => `
    lot AQU-24 Aquilegia alpina, 60 seeds, collected 2024-08
    split AQU-24, A 30 seeds, B 30 seeds
    soak AQU-24/A 2024-11-02 19:00, KNO3 0.2 %, 24 h
    soak AQU-24/B 2024-11-02 19:00, water, 24 h
    sow AQU-24/A 2024-11-03 19:00, in grit
    sow AQU-24/B 2024-11-03 19:00, in ${medium}
    count AQU-24/A 2024-12-03, ${count}
    count AQU-24/B 2024-12-03, 5
    lot NEW-26 Aquilegia alpina, 50 seeds
  `;

  test('because more differs than the treatment is on the page with the reason, and the answer does not deny it', () => {
    expect(answerOn(source('loam'))).toBe(
      'No trial of one agent on Aquilegia alpina in your records can be judged (see below), and your guides say nothing, so there is no advice.');
    expect(pageOn(source('loam'))['What your records say']).toEqual(
      ['AQU-24: KNO3 0.2 % 24 h', 'Left out: the sides also differ in medium.', 'From AQU-24 (journal.germ:1).']);
    expect(pageOn(source('grit'))['What your records say']!.join()).not.toContain('Left out');
  });

  test('because two agents were in one soak is told with what came of it', () => {
    const both = source('grit').replace('KNO3 0.2 %,', 'KNO3 0.2 %, GA3 500 ppm,');
    expect(answerOn(both)).toMatch(/^No trial of one agent on Aquilegia alpina in your records can be judged \(see below\)/);
    expect(pageOn(both)['What your records say']).toEqual(['AQU-24: KNO3 0.2 % + GA3 500 ppm 24 h', expect.stringMatching(/^(Worth|Cannot).* 20 of 30 /),
      'Left out of the advice: several agents or soaks together are a trial of none of them.', 'From AQU-24 (journal.germ:1).']);
  });

  test('because no untreated seed was sown, or its day of judging has not come, is told with that', () => {
    const alone = source('grit').replace(/sow AQU-24\/B.*\n/, '').replace(/count AQU-24\/B.*\n/, '');
    expect(pageOn(alone)['What your records say']).toContain('Left out: no untreated seed of this lot can be compared with it.');
    const judged = source('grit').replace('soak', 'judge AQU-24 2024-11-02, on 2027-03-01\nsoak');
    expect(pageOn(judged)['What your records say']![1]).toMatch(/^Cannot tell yet: this trial is judged by the counts of 2027-03-01/);
  });

  test('because drops reached the seed is told with that', () => {
    const wetted = source('grit').replaceAll(/^ *soak .*$/gm, '').replace('count AQU-24/A', 'apply AQU-24/A 2024-11-04, GA3 500 ppm, 5 mL\n count AQU-24/A');
    expect(pageOn(wetted)['What your records say']).toEqual(['AQU-24/A',
      expect.stringMatching(/^Left out: the “apply” of 2024-11-04 can have reached seed that had not germinated, /)]);
  });

  test('because of an error is not said to be no trial', () => {
    const said = pageOn(source('grit', '20, 1 lots'))['What your records say']!.join(' ');
    expect(said).toContain('AQU-24/A Left out until you fix it: ');
    expect(said).not.toContain('No treatment of');
  });
});
