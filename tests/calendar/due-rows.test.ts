import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { due, everythingDue } from '../../server/src/calendar/due.ts';
import { dueRows, namesInRow } from '../../server/src/calendar/due-rows.ts';
import { icsOf } from '../../server/src/calendar/ics.ts';
import { longAgoRows } from '../../server/src/calendar/long-ago.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { treatmentText } from '../../server/src/words/treatment.ts';
import { tenWinters } from '../support/ten-winters.ts';
import { dueOf, itemsOf, journalOf, moment } from './helpers.ts';

const longAgo = (journal: Journal, now: string) => everythingDue(journal, moment(now)).filter(({ group }) => group === 'long ago');
const rowsOf = (journal: Journal, now: string) =>
  dueRows(due(journal, moment(now))).map(({ item, round }) => round ?? `${item.kind} ${item.id}`);

describe('overdue counts of one place', () => {
  const sown = ['A', 'B', 'C'].map(id => `lot ${id} Iris alba, 10 seeds\nsow ${id} 2026-01-10, at Shelf 1\n`).join('');

  it('are one row, and those of another place or of today are not among them', () => {
    const more = 'count A 2026-01-20, 1\nlot D Iris alba, 10 seeds\nsow D 2026-01-10, at tray 4\nlot E Iris alba, 9 seeds\nsow E 2026-02-19, at shelf 1\n';
    // A was looked at on 20 January, so a count was due on the 27th; that of B and C on 17 January, 40 days before.
    expect(rowsOf(journalOf(sown + more), '2026-02-26')).toEqual(['3 counts at Shelf 1, longest 40 days', 'count D', 'count E']);
  });

  it('are told without a place where they have none, and with one day in the singular', () => {
    const bare = sown.replaceAll(', at Shelf 1', '');
    expect(rowsOf(journalOf(bare), '2026-02-26')).toEqual(['3 counts with no place recorded, longest 40 days']);
    expect(rowsOf(journalOf(sown), '2026-01-18')).toEqual(['3 counts at Shelf 1, longest 1 day']);
  });

  it('are no row yet on the day on which they fall due, and those that lie ahead never are', () => {
    expect(rowsOf(journalOf(sown), '2026-01-17')).toEqual(['count A', 'count B', 'count C']);
    expect(rowsOf(journalOf(sown), '2026-01-16')).toEqual(['count A', 'count B', 'count C']);
  });

  it('keep their own items for who writes the records', () => {
    const [row] = dueRows(itemsOf(sown, '2026-02-26'));
    expect(row!.items.map(({ action }) => action)).toEqual(['count A 2026-02-26, ', 'count B 2026-02-26, ', 'count C 2026-02-26, ']);
  });

  it('are one row for all slots of a bag, whatever it lies in, in the order of the slots and with each of them', () => {
    const bag = [['A', 'bag 3 slot 10'], ['B', 'Bag 3 slot 2'], ['C', 'fridge bag 3 slot 1'], ['D', 'bag 4 slot 1'], ['E', 'bag 3'], ['F', 'slot 4']]
      .map(([id, place], n) => `lot ${id} Iris alba, 10 seeds\nsow ${id} 2026-01-${10 + n}, at ${place}\n`).join('');
    const rows = dueRows(itemsOf(bag, '2026-02-26'));
    expect(rows.map(({ round, item }) => round ?? item.id)).toEqual(['4 counts at bag 3, longest 40 days', 'D', 'F']);
    expect(rows.map(({ place }) => place)).toEqual(['bag 3', 'bag 4 slot 1', 'slot 4']);
    expect(namesInRow(rows[0]!)).toEqual(['E', 'C (slot 1)', 'B (slot 2)', 'A (slot 10)']);
    expect(rows[0]!.items.map(({ action }) => action)).toEqual(['E', 'C', 'B', 'A'].map(id => `count ${id} 2026-02-26, `));
    const at = moment('2026-02-26');
    const text = icsOf([{ items: itemsOf(bag, '2026-02-26'), now: at, zone: undefined }], { stamp: Date.UTC(2026, 1, 26) });
    const [event] = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent');
    expect(['summary', 'location', 'description'].map(name => event!.getFirstPropertyValue(name))).toEqual([
      'Overdue: 4 counts at bag 3, longest 40 days', 'bag 3', 'E, C (slot 1), B (slot 2), A (slot 10)',
    ]);
  });

  it('of a batch in two places are of neither', () => {
    const two = 'lot A Iris alba, 10 seeds\nsow A 2026-01-10, 5 seeds, at tray 1 slot 1\nsow A 2026-01-11, 5 seeds, at tray 2 slot 1\n';
    const one = 'lot B Iris alba, 10 seeds\nsow B 2026-01-10, at tray 1 slot 2\n';
    expect(rowsOf(journalOf(two + one), '2026-02-26')).toEqual(['count B', 'count A']);
  });

  it('have a key of their own, and a single one keeps that of its item', () => {
    const more = ['D 2026-01-10, at tray 4', 'E 2026-01-10, at tray 5', 'F 2026-01-10, at tray 5'];
    const items = itemsOf(sown + more.map(sow => `lot ${sow[0]} Iris alba\nsow ${sow}\n`).join(''), '2026-02-26');
    expect(dueRows(items).map(({ key }) => key)).toEqual(['counts/shelf1', 'count/D/2026-01-10', 'counts/tray5']);
  });
});

describe('stages that ended in the slots of one bag', () => {
  const chilled = (id: string, slot: number, facts = '4 C, 8 weeks') =>
    `lot ${id} Iris alba, 10 seeds\nchill ${id} 2025-12-0${slot}, ${facts}, at bag 1 slot ${slot}\ncount ${id} 2026-02-05, 0\n`;
  // Eight weeks from 1, 2 and 3 December are over on 26, 27 and 28 January.
  const bag = chilled('A', 3) + chilled('B', 2) + chilled('C', 1);
  const rowOf = (source: string) => dueRows(itemsOf(source, '2026-02-05', 'stage'));

  it('are one row, and its records are written from slot to slot', () => {
    const [row, ...others] = rowOf(bag);
    expect([row!.round, row!.place, row!.key]).toEqual(
      ['3 at bag 1: chill 4 C 8 weeks ends', 'bag 1', 'stages/bag1/warm/chill 4 C 8 weeks ends']);
    expect(namesInRow(row!)).toEqual(['C (slot 1)', 'B (slot 2)', 'A (slot 3)']);
    expect(row!.items.map(({ action }) => action)).toEqual(['C', 'B', 'A'].map(id => `warm ${id} 2026-02-05`));
    expect(others).toEqual([]);
  });

  it('are rows of their own where they were planned otherwise, ask for another record, or end today', () => {
    const uncounted = 'lot E Iris alba, 10 seeds\nchill E 2025-12-01, 4 C, 8 weeks, at bag 1 slot 5\n';
    const today = 'lot F Iris alba, 10 seeds\nchill F 2025-12-11, 4 C, 8 weeks, at bag 1 slot 6\n';
    expect(rowOf(bag + chilled('D', 4, '2 C, 8 weeks') + uncounted + today).map(({ round, item }) => round ?? item.action)).toEqual([
      '3 at bag 1: chill 4 C 8 weeks ends', 'sow E 2026-02-05', 'warm D 2026-02-05', 'sow F 2026-02-05',
    ]);
  });
});

describe('a journal of ten winters, opened in the autumn after the last', () => {
  const journal = new Journal();
  for (const { name, text } of tenWinters()) journal.set(name, text);
  const now = '2026-11-28';

  it('shows what can still be acted on', () => {
    expect(rowsOf(journal, now)).toEqual([
      // Soaked with no end, to come out on 2 November 2025: that is 391 days ago.
      'soak F25',
      // A25 and C25, last counted on 15 December 2025: due on the 22nd, 341 days ago. A25 is all accounted for.
      'count C25', 'count D25',
      // Chilled from 1 November 2025 for 90 days, to 30 January.
      'stage E25',
      // Sown on 1 November 2025: warm for 12 weeks, to 24 January.
      'stage D25', 'reminder E25',
      // Made up on 1 October 2022; stocks keep for 4 years.
      'stock S22',
      'stock S23', 'stock S24', 'stock S25',
    ].sort((a, b) => rowsOf(journal, now).indexOf(a) - rowsOf(journal, now).indexOf(b)));
  });

  it('puts apart what nobody did anything about for more than a year, and loses none of it', () => {
    const years = (letter: string, ...left: number[]) => left.map(year => `${letter}${year}`);
    const before = [16, 17, 18, 19, 20, 21, 22, 23, 24];
    expect(longAgoRows(longAgo(journal, now))).toEqual([
      // C and D of each winter were counted or sown last on 15 December and 1 November.
      { what: '18 counts, the first due on 2016-11-08', names: [...years('C', ...before), ...years('D', ...before)] },
      { what: '9 soaks with no end recorded, the first due on 2016-11-02', names: years('F', ...before) },
      { what: '18 stages that ended, the first due on 2017-01-24', names: [...years('D', ...before), ...years('E', ...before)] },
      // Made up on 1 October, good for four years: that of 2021 was due on 1 October 2025, 423 days ago.
      { what: '6 stocks past their date, the first due on 2020-10-01', names: years('S', 16, 17, 18, 19, 20, 21) },
      { what: '9 reminders, the first due on 2017-02-01', names: years('E', ...before) },
    ]);
  });

  it('rings for nothing that is over', () => {
    const at = moment(now);
    const told = { items: due(journal, at), past: longAgo(journal, now), now: at, zone: journal.zone };
    const text = icsOf([told], { stamp: Date.UTC(2026, 10, 28) });
    const events = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent');
    const ringing = events.filter(event => event.getFirstSubcomponent('valarm')).map(event => String(event.getFirstPropertyValue('summary')));
    expect(ringing).toEqual([expect.stringMatching(/^S23: good until 2027/), expect.stringMatching(/^S24/), expect.stringMatching(/^S25/)]);
    const apart = events.filter(event => String(event.getFirstPropertyValue('uid')).startsWith('long-ago'));
    expect(apart.map(event => [event.getFirstPropertyValue('summary'), String(event.getFirstPropertyValue('dtstart'))])).toEqual([
      ['Nothing done for more than a year: 60 things', '2026-11-28'],
    ]);
    expect(apart[0]!.getFirstPropertyValue('description')).toContain('9 reminders, the first due on 2017-02-01: E16, E17');
  });
});

describe('a stage', () => {
  const regime = 'regime w, warm 20 C 12 weeks, chill 4 C 14 weeks\nlot P Paris polyphylla, 20 seeds\nsow P 2025-10-26, in moss, regime w, at bag 3 slot 1\n';

  it('is owed its end when the batch was counted since, for a count moves no seed, and for no longer than a year and a month', () => {
    // 12 weeks from 26 October are 18 January, and 400 days more 2027-02-22.
    const end = ['overdue: 2026-01-18 stage P'];
    expect(dueOf(regime, '2026-02-01', 'stage')).toEqual(end);
    expect(dueOf(`${regime}count P 2026-01-17, 0`, '2026-02-01', 'stage')).toEqual(end);
    expect(dueOf(`${regime}count P 2026-01-20, 0`, '2026-02-01', 'stage')).toEqual(end);
    expect(dueOf(`${regime}count P 2027-02-20, 0`, '2027-02-22', 'stage')).toEqual(end);
    expect(dueOf(`${regime}count P 2027-02-20, 0`, '2027-02-23', 'stage')).toEqual([]);
    expect(longAgo(journalOf(`${regime}count P 2027-02-20, 0`), '2027-02-23').map(({ kind }) => kind)).toEqual(['stage']);
  });

  it('owes nothing once the seed was sown out of its bag into compost, which is no second sowing of no seed', () => {
    const journal = journalOf(`${regime}sow P 2026-01-10, in compost, at frame 1`);
    expect(dueOf(journal, '2026-02-01', 'stage')).toEqual([]);
    const { sown, tested, origin } = journal.lot('P')!.root;
    expect([sown, tested, origin?.moment.day]).toEqual([20, 20, moment('2025-10-26').day]);
  });

  it('that nobody wrote down is among what was done, as planned or as passed', () => {
    const treatment = (now: string, more = '') => treatmentText(journalOf(regime + more).lot('P')!.root, moment(now));
    // Warm from 26 October to 18 January, then 14 weeks of cold, to 26 April.
    expect(treatment('2025-12-01')).toBe('20 C 12 weeks (planned), then 4 C 14 weeks (planned)');
    expect(treatment('2026-01-17')).toBe('20 C 12 weeks (planned), then 4 C 14 weeks (planned)');
    expect(treatment('2026-01-18')).toBe('20 C 12 weeks (planned, passed), then 4 C 14 weeks (planned)');
    expect(treatment('2026-02-01')).toBe('20 C 12 weeks (planned, passed), then 4 C 14 weeks (planned)');
    expect(treatment('2026-02-01', 'chill P 2026-01-20, 5 C')).toBe('20 C 12 weeks (planned, passed), then 5 C');
    expect(treatment('2026-06-01', 'sow P 2026-04-20, in compost')).toBe('20 C 12 weeks (planned, passed), then 4 C 14 weeks (planned, passed)');
    expect(treatment('2026-06-01', 'sow P 2026-01-18, in compost')).toBe('20 C 12 weeks (planned, passed)');
  });
});

describe('an empty count', () => {
  it('is no look, no zero and no answer, whatever blanks and commas follow', () => {
    const sown = 'lot A Iris alba, 10 seeds\nsow A 2026-01-10\n';
    for (const line of ['count A 2026-01-20', 'count A 2026-01-20,', 'count A 2026-01-20, ', 'count A 2026-01-20 , ,']) {
      expect(dueOf(sown + line, '2026-01-21', 'count'), line).toEqual(['overdue: 2026-01-17 count A']);
      expect(journalOf(sown + line).lot('A')!.root.events.at(-1)!.type, line).toBe('blank');
    }
    expect(dueOf(`${sown}count A 2026-01-20, 0`, '2026-01-21', 'count')).toEqual(['this week: 2026-01-27 count A']);
  });
});
