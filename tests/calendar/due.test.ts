import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { due, dueGroups, everythingDue, inDueOrder } from '../../server/src/calendar/due.ts';
import { recordLine } from '../../server/src/calendar/ask.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { isoOf, type Day } from '../../server/src/model/day.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { journal as arbitraryJournal } from '../support/arbitrary-journal.ts';
import { day, dueOf, itemsOf, journalOf, moment } from './helpers.ts';

describe('the due list', () => {
  const source = `
    lot A Iris alba, 10 seeds
    lot B Iris alba, 10 seeds
    soak A 2026-01-30 19:00, water, 24 h
    sow B 2026-01-24
    due A 2026-01-31, buy sand
    due B 2026-02-06, ask
    due B 2026-02-07, ask again
    lot C Iris alba, 10 seeds
    due C 2026-01-01, long ago
    due C 2026-01-30, yesterday
  `;

  it('has the overdue first, then today, the seven days from today, and later; each by time', () => {
    expect(dueOf(source, '2026-01-31 12:00')).toEqual([
      'overdue: 2026-01-01 reminder C', 'overdue: 2026-01-30 reminder C',
      'today: 2026-01-31 reminder A', 'today: 2026-01-31 count B', 'today: 2026-01-31 19:00 soak A',
      'this week: 2026-02-06 reminder B', 'later: 2026-02-07 reminder B',
    ]);
  });

  it('of several journals keeps each group together, whatever day it is by the clock of each', () => {
    const looks = (id: string) => ['10', '11', '17'].map(on => `due ${id} 2026-01-${on}, look\n`).join('');
    // It is the 10th where A lies and the 11th where B does: the 17th is later for A, and within this week for B.
    const items = [
      ...itemsOf(`lot A Iris alba\n${looks('A')}`, '2026-01-10'), ...itemsOf(`lot B Iris alba\n${looks('B')}`, '2026-01-11'),
    ];
    expect(items.sort(inDueOrder).map(({ group, id, day: on }) => `${group} ${id} ${isoOf(on).slice(-2)}`)).toEqual([
      'overdue B 10', 'today A 10', 'today B 11', 'this week A 11', 'this week B 17', 'later A 17',
    ]);
  });

  it('turns at midnight', () => {
    const groups = (now: string) => dueOf(source, now, 'soak', 'count');
    expect(groups('2026-01-30 23:59')).toEqual(['this week: 2026-01-31 count B', 'this week: 2026-01-31 19:00 soak A']);
    expect(groups('2026-01-31 00:00')).toEqual(['today: 2026-01-31 count B', 'today: 2026-01-31 19:00 soak A']);
    expect(groups('2026-02-01 00:00')).toEqual(['overdue: 2026-01-31 count B', 'overdue: 2026-01-31 19:00 soak A']);
  });

  it('asks for parts from the day on which they are split off, and for what they come from until then', () => {
    const split = `
      lot A Iris alba, 60 seeds
      sow A 2026-01-01
      count A 2026-01-10, 25
      split A 2026-01-31, 1 20 seeds, 2 20 seeds
    `;
    expect(dueOf(split, '2026-01-20', 'count')).toEqual(['overdue: 2026-01-17 count A']);
    expect(dueOf(split, '2026-01-31', 'count')).toEqual(['overdue: 2026-01-17 count A/1', 'overdue: 2026-01-17 count A/2']);
  });

  it('before the first record has only what is written ahead', () => {
    expect(dueOf(source, '2025-12-24', 'soak', 'count', 'stage', 'ahead')).toEqual([
      'later: 2026-01-24 ahead B', 'later: 2026-01-30 19:00 ahead A',
    ]);
    expect(itemsOf(source, '2025-12-24', 'ahead').map(({ what }) => what)).toEqual(['sow', 'soak: water, 24 h']);
    expect(dueOf('', '2025-12-24')).toEqual([]);
    expect(dueOf('lot A Iris alba', '2025-12-24')).toEqual([]);
  });

  it('says where a batch lies, of which plant it is, and which record an item comes from', () => {
    const [item] = itemsOf('--- a.germ\n\nlot A Iris alba\nsow A 2026-01-30, at bag 1 slot 2', '2026-01-31');
    expect(item).toMatchObject({ id: 'A', plant: 'Iris alba', place: 'bag 1 slot 2' });
    expect([item?.entry.line.store.name, item?.entry.line.number]).toEqual(['a.germ', 2]);
  });

  it('is the same whatever the order of the lines', () => {
    const lines = [
      'regime woodland, warm 20 C 4 weeks, chill 4 C 5 weeks', 'lot A Iris alba, 20 seeds', 'split A, X 10 seeds, Y 10 seeds',
      'soak A/X 2026-01-10 19:00, water, 24 h', 'lift A/X 2026-01-11 18:00', 'sow A/X 2026-01-11 19:00, regime woodland',
      'sow A/Y 2026-01-11 19:00', 'count A/X 2026-01-20, 2', 'chill A/X 2026-02-10, 4 C', 'count A/Y 2026-02-12, 2',
      'due A/Y 2026-02-13, ask', 'stock G1 2026-01-09, GA3 20 mg, 20 mL',
    ];
    const sorted = (list: readonly string[]) => [...list].sort();
    const wanted = sorted(dueOf(lines.join('\n'), '2026-02-15'));
    expect(wanted).toHaveLength(5);
    fc.assert(fc.property(fc.shuffledSubarray(lines, { minLength: lines.length }), shuffled => {
      expect(sorted(dueOf(shuffled.join('\n'), '2026-02-15'))).toEqual(wanted);
    }));
  });

  it('takes ten winters', () => {
    const winters = Array.from({ length: 10 }, (_, i) => {
      const [year, id] = [2016 + i, `L${i}`];
      const closed = i < 9 ? `discard ${id} ${year + 1}-06-01, the end\n` : '';
      return `lot ${id} Iris alba, 10 seeds\nsow ${id} ${year}-11-01\ncount ${id} ${year}-11-08, 1\n${closed}`;
    });
    expect(dueOf(winters.join(''), '2025-11-09')).toEqual(['this week: 2025-11-15 count L9']);
  });
});

describe('the key of an item', () => {
  const keys = (source: string, now: string) => itemsOf(source, now).map(({ key }) => key);

  it('stays the same when lines move and when the item is put off', () => {
    const source = 'lot A Iris alba\nsow A 2026-01-10, at bag 1\n';
    expect(keys(source, '2026-01-11')).toEqual(['count/A/2026-01-10']);
    expect(keys(`# A heading\n\n${source}`, '2026-01-30')).toEqual(['count/A/2026-01-10']);
    expect(keys(`${source}count A 2026-01-30, 0`, '2026-01-30')).toEqual(['count/A/2026-01-10']);
  });

  it('tells two reminders of one day apart', () => {
    expect(keys('lot A Iris alba\ndue A 2026-01-10, ask\ndue A 2026-01-10, write', '2026-01-01'))
      .toEqual(['reminder/A/2026-01-10', 'reminder/A/2026-01-10/2']);
  });
});

describe('whatever the journal', () => {
  const read = (files: readonly { name: string; text: string }[]) => {
    const journal = new Journal();
    for (const { name, text } of files) journal.set(name, text);
    return journal;
  };
  const days = fc.integer({ min: -400, max: 400 });

  it('keys are unique, groups are in order, and each action is a record that reads without a problem once it is filled in', () => {
    const times = fc.option(fc.nat(1439), { nil: undefined });
    fc.assert(fc.property(arbitraryJournal, days, times, ({ files, today }, shift, minutes) => {
      const items = due(read(files), { day: today + shift, minutes });
      expect(new Set(items.map(({ key }) => key)).size).toBe(items.length);
      const ranks = items.map(({ group }) => dueGroups.indexOf(group));
      expect(ranks).toEqual([...ranks].sort());
      for (const { action } of items) {
        if (action !== undefined) expect(parse(action.replace(/, $/, ', 0')).problems, action).toEqual([]);
      }
    }));
  });

  it('an item for which the record it asks for is written is not asked for again on that day', () => {
    const asks = (now: Day) => (item: ReturnType<typeof due>[number]) => item.ask && item.day <= now && item.kind !== 'stock';
    fc.assert(fc.property(arbitraryJournal, fc.integer({ min: 0, max: 400 }), ({ files, today }, shift) => {
      const now = { day: today + shift, minutes: 720 };
      const journal = read(files);
      for (const { key, ask } of due(journal, now).filter(asks(now.day))) {
        const line = recordLine(ask!, now).replace(/, $/, ', 0');
        const after = due(read([...files, { name: 'z.germ', text: line }]), now);
        const again = after.filter(item => item.key === key && item.day <= now.day);
        expect(again, `${line}\n${isoOf(now.day)}`).toEqual([]);
      }
    }), { numRuns: 40 });
  });

  it('a soak that nobody lifts is listed on every later day', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 96 }), fc.nat(2000), (hours, later) => {
      const journal = journalOf(`lot A Iris alba\nsoak A 2026-01-10 19:00, water, ${hours} h`);
      const now = { day: day('2026-01-11') + later, minutes: 0 };
      expect(everythingDue(journal, now).map(({ kind }) => kind)).toEqual(['soak']);
    }));
    expect(due(journalOf('lot A Iris alba\nsoak A 2026-01-10 19:00, water, 1 h'), moment('2026-01-09'))[0]?.kind).toBe('ahead');
  });
});
