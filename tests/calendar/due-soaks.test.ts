import { describe, expect, it } from 'vitest';
import { everythingDue } from '../../server/src/calendar/due.ts';
import { runningSoaks } from '../../server/src/calendar/soaks.ts';
import { printMoment } from '../../server/src/journal/moment.ts';
import { dueOf, itemsOf, journalOf, moment } from './helpers.ts';

const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\n';
const soak = (facts: string, more = '') => `${lot}soak VER-24 2026-01-10 19:00, ${facts}\n${more}`;

describe('the end of a soak', () => {
  it('is due after its time span, at its until, else at the limit', () => {
    expect(dueOf(soak('water, 24 h'), '2026-01-11 08:00')).toEqual(['today: 2026-01-11 19:00 soak VER-24']);
    expect(dueOf(soak('water, until 2026-01-12 07:30'), '2026-01-11 08:00')).toEqual(['this week: 2026-01-12 07:30 soak VER-24']);
    expect(dueOf(soak('water', 'limit soak, 12 h\n'), '2026-01-10 20:00')).toEqual(['this week: 2026-01-11 07:00 soak VER-24']);
    expect(dueOf(soak('water', 'limit soak, 12 h\nlimit soak, 6 h, for Veratrum\n'), '2026-01-10 20:00'))
      .toEqual(['this week: 2026-01-11 01:00 soak VER-24']);
  });

  it('asks for a lift at that moment, and once it is over for one at the present', () => {
    const actions = (now: string) => itemsOf(soak('G2 10 mL, 24 h'), now).map(({ what, action }) => [what, action]);
    expect(actions('2026-01-11 08:00')).toEqual([['lift out of G2 after 24 h', 'lift VER-24 2026-01-11 19:00']]);
    expect(actions('2026-01-11 22:15')).toEqual([['lift out of G2 after 24 h', 'lift VER-24 2026-01-11 22:15']]);
    expect(actions('2026-01-13')).toEqual([['lift out of G2 after 24 h', 'lift VER-24 2026-01-13']]);
  });

  it('says how long it has been overdue: in days of the calendar, and in minutes where the times of day are known', () => {
    const late = (now: string) => itemsOf(soak('water, 24 h'), now).map(item => [item.group, item.overdueDays, item.overdueMinutes]);
    expect(late('2026-01-11 19:00')).toEqual([['today', 0, undefined]]);
    expect(late('2026-01-11 19:01')).toEqual([['overdue', 0, 1]]);
    expect(late('2026-01-12 00:00')).toEqual([['overdue', 1, 300]]);
    expect(late('2026-01-12')).toEqual([['overdue', 1, undefined]]);
  });

  it('says what the seed is in, and what sets the end', () => {
    const said = (facts: string, now: string, more = '') => itemsOf(soak(facts, more), now).map(({ what }) => what);
    expect(said('GA3 500 ppm, KNO3 0.2 %, 24 h', '2026-01-11 08:00')).toEqual(['lift out of GA3, KNO3 after 24 h']);
    expect(said('water, until 2026-01-12 07:30', '2026-01-11 08:00')).toEqual(['lift out of water']);
    expect(said('water', '2026-01-10 20:00', 'limit soak, 12 h\n')).toEqual(['lift out of water: the limit of 12 h is reached; no end recorded']);
    // Nobody leaves seed in a soak for 59 days: 21 to the end of January, 28 of February, 10 of March.
    expect(said('water, 24 h', '2026-03-10')).toEqual(['soak in water: no lift recorded; it began 59 days ago']);
  });

  it('has no time of day when the start has none', () => {
    expect(dueOf(`${lot}soak VER-24 2026-01-10, water, 24 h`, '2026-01-10 20:00')).toEqual(['this week: 2026-01-11 soak VER-24']);
    expect(dueOf(`${lot}soak VER-24 2026-01-10, water, 24 h`, '2026-01-11 20:00')).toEqual(['today: 2026-01-11 soak VER-24']);
  });

  it('is due, and rings, whatever is seen of the seed before its planned end', () => {
    for (const line of ['count VER-24 2026-01-10 20:00, 1', 'count VER-24 2026-01-11 18:59, 0', 'give VER-24 2026-01-10 20:00, 6 seeds, to a friend']) {
      const source = soak('GA3 500 ppm, 24 h', line);
      expect(dueOf(source, '2026-01-11 19:30'), line).toEqual(['overdue: 2026-01-11 19:00 soak VER-24']);
      expect(runningSoaks(journalOf(source), moment('2026-01-11 08:00')).map(({ end }) => printMoment(end)), line).toEqual(['2026-01-11 19:00']);
      expect(dueOf(`${source}\ncount VER-24 2026-01-11 19:10, 0`, '2026-01-11 19:30').filter(text => text.includes('soak')), line).toEqual([]);
    }
  });

  it('stays overdue until a record shows that the seed came out', () => {
    const out = ['lift VER-24 2026-01-12', 'sow VER-24 2026-01-12', 'scarify VER-24 2026-01-12', 'apply VER-24 2026-01-12, GA3 100 ppm', 'chill VER-24 2026-01-12', 'warm VER-24 2026-01-12',
      'count VER-24 2026-01-12, 1', 'discard VER-24 2026-01-12, soft', 'pot VER-24 2026-01-12'];
    for (const record of out) expect(dueOf(soak('water, 24 h', record), '2026-02-01', 'soak'), record).toEqual([]);
    for (const record of ['note VER-24 2026-01-12, clear', 'move VER-24 2026-01-12, at shelf', 'photo VER-24 2026-01-12, a.png']) {
      expect(dueOf(soak('water, 24 h', record), '2026-02-01', 'soak'), record).toEqual(['overdue: 2026-01-11 19:00 soak VER-24']);
    }
  });

  it('is not asked to be ended today once nobody would have left the seed in it so long', () => {
    const left = (facts: string, more = '') => everythingDue(journalOf(soak(facts, more)), moment('2028-03-03')).map(({ group, what, action }) => [group, what, action]);
    // 783 days: 355 from 10 January to the end of 2026, 365 of 2027, 63 to 3 March 2028, which is a leap year.
    expect(left('water')).toEqual([['long ago', 'soak in water: no end recorded; it began 783 days ago', undefined]]);
    expect(left('water', 'scarify VER-24 2026-03-01')).toEqual([]);
    expect(left('water', 'move VER-24 2026-03-01, at shelf')).toEqual([]);
    expect(runningSoaks(journalOf(soak('water')), moment('2028-03-03'))).toEqual([]);
  });

  it('belongs to the batches that the seed was divided into in the soak', () => {
    const split = 'split VER-24 2026-01-10 20:00, A 30 seeds, B 30 seeds\nlift VER-24/A 2026-01-11 19:00\n';
    expect(dueOf(soak('water, 24 h', split), '2026-01-12')).toEqual(['overdue: 2026-01-11 19:00 soak VER-24/B']);
  });

  it('is that of the second soak when one follows another', () => {
    expect(dueOf(soak('water, 12 h', 'soak VER-24 2026-01-11 08:00, GA3 500 ppm, 24 h'), '2026-01-11 09:00'))
      .toEqual(['this week: 2026-01-12 08:00 soak VER-24']);
  });

  it('is not listed where a record of a later date takes the seed out, which is', () => {
    expect(dueOf(soak('water, 24 h', 'sow VER-24 2026-01-11 19:10'), '2026-01-11 08:00')).toEqual(['today: 2026-01-11 19:10 ahead VER-24']);
  });
});

describe('the clocks that change in a soak', () => {
  const zoned = (zone: string, start: string) =>
    dueOf(`zone ${zone}\n${lot}soak VER-24 ${start}, water, 24 h`, start)[0]?.replace(/^.*: (.*) soak.*$/, '$1');

  // The change dates that the IANA time zone database has for 2026.
  it('move its end by the hour that they lose or gain', () => {
    expect(zoned('Europe/Vienna', '2026-03-28 19:00')).toBe('2026-03-29 20:00');
    expect(zoned('Europe/Vienna', '2026-10-24 19:00')).toBe('2026-10-25 18:00');
    expect(zoned('America/New_York', '2026-03-07 19:00')).toBe('2026-03-08 20:00');
    expect(zoned('America/New_York', '2026-10-31 19:00')).toBe('2026-11-01 18:00');
    expect(zoned('Australia/Lord_Howe', '2026-10-03 19:00')).toBe('2026-10-04 19:30');
    // Summer time begins at midnight there.
    expect(zoned('America/Santiago', '2026-09-05 19:00')).toBe('2026-09-06 20:00');
    expect(zoned('Asia/Kolkata', '2026-03-28 19:00')).toBe('2026-03-29 19:00');
  });

  it('show a time twice: what ends at the second is not overdue after the first', () => {
    const short = `zone Europe/Vienna\n${lot}soak VER-24 2026-10-25 02:30, water, 45 min`;
    expect(dueOf(short, '2026-10-25 02:40')).toEqual(['today: 2026-10-25 02:15 soak VER-24']);
    expect(dueOf(short, '2026-10-25 03:00')).toEqual(['overdue: 2026-10-25 02:15 soak VER-24']);
  });

  it('do nothing where the journal names no zone, or where the time span is in days', () => {
    expect(dueOf(`${lot}soak VER-24 2026-03-28 19:00, water, 24 h`, '2026-03-29 08:00')).toEqual(['today: 2026-03-29 19:00 soak VER-24']);
    expect(dueOf(`zone Europe/Vienna\n${lot}soak VER-24 2026-03-28 19:00, water, 1 day`, '2026-03-29 08:00'))
      .toEqual(['today: 2026-03-29 19:00 soak VER-24']);
  });
});

describe('the soaks that run', () => {
  it('say when each is to end, why, and when the limit is reached', () => {
    const journal = journalOf(`
      lot A Iris alba, 10 seeds
      lot B Iris alba, 10 seeds
      lot C Iris alba, 10 seeds
      soak A 2026-01-10 19:00, water, 30 h
      soak B 2026-01-10 20:00, water, until 2026-01-11 08:00
      soak C 2026-01-10 21:00, water
    `);
    const soaks = runningSoaks(journal, moment('2026-01-10 22:00'));
    const shown = soaks.map(({ batch: { path }, end, endBy, limitAt }) =>
      [path, printMoment(end), endBy, printMoment(limitAt)]);
    expect(shown).toEqual([
      ['A', '2026-01-12 01:00', 'duration', '2026-01-11 19:00'],
      ['B', '2026-01-11 08:00', 'until', '2026-01-11 20:00'],
      ['C', '2026-01-11 21:00', 'limit', '2026-01-11 21:00'],
    ]);
  });

  it('are none before they begin', () => {
    const journal = journalOf(soak('water, 24 h'));
    expect(runningSoaks(journal, moment('2026-01-10 18:59'))).toEqual([]);
    expect(runningSoaks(journal, moment('2026-01-10 19:00'))).toHaveLength(1);
  });
});
