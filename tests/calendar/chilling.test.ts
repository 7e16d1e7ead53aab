import { describe, expect, it } from 'vitest';
import { chilling, chillHoursOf } from '../../server/src/calendar/chilling.ts';
import { batchOf, journalOf, moment } from './helpers.ts';

const base = `
regime twice, warm 20 C 60 days, chill 4 C 90 days, warm 20 C 60 days, chill 12/4 C 60 days
regime cold, chill 4 C 90 days, warm 20 C 60 days
lot A Iris alba, 20 seeds
`;

function cold(source: string, now: string, path = 'A') {
  const journal = journalOf(base + source);
  return chilling(batchOf(journal, path), moment(now));
}

describe('hours within 0 to 10 C', () => {
  it('are all of a day at one temperature within, the ends included, and none outside', () => {
    const hours = (degrees: number, unit: 'C' | 'F' = 'C') => chillHoursOf({ day: degrees, night: undefined, unit });
    expect([-0.1, 0, 4, 10, 10.1, 20].map(degrees => hours(degrees))).toEqual([0, 24, 24, 24, 0, 0]);
    // 32 F is 0 C and 50 F is 10 C, by definition.
    expect([31.9, 32, 41, 50, 50.1].map(degrees => hours(degrees, 'F'))).toEqual([0, 24, 24, 24, 0]);
  });

  it('are half a day each for a temperature of the day and of the night', () => {
    const hours = (day: number, night: number) => chillHoursOf({ day, night, unit: 'C' });
    expect([hours(12, 4), hours(4, 12), hours(8, 4), hours(20, 15), hours(5, -2)]).toEqual([12, 12, 24, 0, 12]);
  });
});

describe('chill so far against chill wanted', () => {
  it('is counted in days of the calendar and in hours', () => {
    expect(cold('chill A 2026-01-01 23:00, 4 C, 90 days', '2026-03-05 01:00')).toEqual({
      soFar: { days: 63, hours: 1512 }, wanted: { days: 90, hours: 2160 }, halfDays: false,
      current: { soFar: { days: 63, hours: 1512 }, wanted: { days: 90, hours: 2160 } },
    });
  });

  it('counts on when the time is over, and ends with the next stage', () => {
    const source = 'chill A 2026-01-01, 4 C, 10 days\n';
    expect(cold(source, '2026-01-31')?.soFar.days).toBe(30);
    expect(cold(`${source}warm A 2026-01-21`, '2026-01-31')).toMatchObject({ soFar: { days: 20 }, current: undefined });
  });

  it('has no hours without a temperature, and wants nothing that is not written', () => {
    expect(cold('chill A 2026-01-01, 90 days', '2026-01-11')?.current)
      .toEqual({ soFar: { days: 10, hours: undefined }, wanted: { days: 90, hours: undefined } });
    expect(cold('chill A 2026-01-01, 4 C', '2026-01-11')?.current)
      .toEqual({ soFar: { days: 10, hours: 240 }, wanted: { days: undefined, hours: undefined } });
  });

  it('wants of a stage that was written again what is planned now, and not all that was planned before', () => {
    // 28 days at 4 C, then 8 weeks: 28 + 56 = 84 days, of which 28 + 22 are over.
    const colder = 'chill A 2026-01-01, 4 C, 12 weeks\nchill A 2026-01-29, 2 C, 8 weeks\n';
    expect(cold(colder, '2026-02-20')).toEqual({
      soFar: { days: 50, hours: 1200 }, wanted: { days: 84, hours: 2016 }, halfDays: false,
      current: { soFar: { days: 50, hours: 1200 }, wanted: { days: 84, hours: 2016 } },
    });
    // Four days late, four weeks more: 60 + 28.
    expect(cold('chill A 2026-01-01, 4 C, 8 weeks\nchill A 2026-03-02, 4 C, 4 weeks\n', '2026-03-03')?.wanted.days).toBe(88);
    // A warm stage between them makes them two: 84 + 56.
    expect(cold(colder.replace('\nchill', '\nwarm A 2026-01-15\nchill'), '2026-02-20')).toMatchObject({
      soFar: { days: 36 }, wanted: { days: 140 }, current: { soFar: { days: 22 }, wanted: { days: 56 } },
    });
  });

  it('adds up the winters of a regime, those to come among the wanted ones', () => {
    const sown = 'sow A 2026-01-01, regime twice\n';
    expect(cold(sown, '2026-02-01')).toEqual({
      soFar: { days: 0, hours: 0 }, wanted: { days: 150, hours: 90 * 24 + 60 * 12 }, current: undefined, halfDays: true,
    });
    const winters = `${sown}chill A 2026-03-02\nwarm A 2026-05-31\nchill A 2026-07-30\n`;
    expect(cold(winters, '2026-08-09')).toMatchObject({
      soFar: { days: 100, hours: 90 * 24 + 10 * 12 }, wanted: { days: 150 },
      current: { soFar: { days: 10 }, wanted: { days: 60 } },
    });
  });

  it('goes by what was written in place of the plan, and by what is off plan as well', () => {
    const source = `sow A 2026-01-01, regime cold
chill A 2026-01-01, 41 F, 60 days
warm A 2026-03-02
chill A 2026-05-01, 2 C, 30 days
`;
    expect(cold(source, '2026-05-11')).toMatchObject({ soFar: { days: 70, hours: 1680 }, wanted: { days: 90, hours: 2160 } });
  });

  it('counts a first stage that has no record of its own, until the next one', () => {
    const sown = 'sow A 2026-01-01, regime cold\n';
    expect(cold(sown, '2026-01-31')?.current).toEqual({ soFar: { days: 30, hours: 720 }, wanted: { days: 90, hours: 2160 } });
    expect(cold(sown, '2026-05-01')?.soFar.days).toBe(120);
    expect(cold(`${sown}warm A 2026-04-11`, '2026-05-01')?.soFar.days).toBe(100);
  });

  it('goes on over a change of temperature within the stage', () => {
    const source = 'sow A 2026-01-01, regime cold\nchill A 2026-01-01, 4 C\nchill A 2026-01-31, 12 C\n';
    expect(cold(source, '2026-02-10')?.current).toEqual({
      // 30 days at 4 C, and the other 60 at 12 C, which is too warm to count.
      soFar: { days: 40, hours: 720 }, wanted: { days: 90, hours: 720 },
    });
    // Ten weeks were meant, then four more from the change on: 59 days of 12 h and 28 of 24.
    const changed = 'sow A 2026-01-01, regime cold\nchill A 2026-02-10, 12/2 C, 10 weeks\nchill A 2026-04-10, 4 C, 4 weeks\n';
    expect(cold(changed, '2026-04-20')?.current).toEqual({
      soFar: { days: 69, hours: 59 * 12 + 10 * 24 }, wanted: { days: 87, hours: 59 * 12 + 28 * 24 },
    });
    // Nothing is left of the 30 days that were meant when the temperature is changed after 40.
    const late = 'sow A 2026-01-01, regime cold\nchill A 2026-01-01, 4 C, 30 days\nchill A 2026-02-10, 2 C\n';
    expect(cold(late, '2026-02-20')?.current?.wanted).toEqual({ days: 30, hours: 720 });
  });

  it('goes along with the seed that is split off', () => {
    const source = 'chill A 2026-01-01, 4 C, 90 days\nsplit A 2026-01-31, X 5 seeds\nwarm A 2026-01-31\n';
    expect(cold(source, '2026-02-10', 'A/X')?.soFar.days).toBe(40);
    expect(cold(source, '2026-02-10')?.soFar.days).toBe(30);
  });

  it('is none for seed that was never chilled and is not to be', () => {
    expect(cold('sow A 2026-01-01\nwarm A 2026-02-01, 20 C, 9 days', '2026-03-01')).toBeUndefined();
  });
});
