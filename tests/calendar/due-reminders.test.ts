import { describe, expect, it } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const lot = 'lot PAR-26 Paris polyphylla, 16 seeds\nsplit PAR-26, A 8 seeds, B 8 seeds\n';
const due = 'due PAR-26/A 2026-02-01, look for mould, then write\n';
const reminders = (source: string, now = '2026-02-10') => dueOf(lot + source, now, 'reminder');

describe('a reminder', () => {
  it('is due on its date, with its text, and asks for a note', () => {
    expect(itemsOf(lot + due, '2026-01-30', 'reminder')[0]).toMatchObject({
      group: 'this week', what: 'look for mould, then write', plant: 'Paris polyphylla',
      action: 'note PAR-26/A 2026-02-01, done: look for mould, then write',
    });
    expect(itemsOf(lot + due, '2026-02-10 10:00', 'reminder')[0]).toMatchObject({
      group: 'overdue', overdueDays: 9, action: 'note PAR-26/A 2026-02-10, done: look for mould, then write',
    });
  });

  it('is done when a record of its day or later shows that the grower had the seed in hand', () => {
    for (const record of ['note PAR-26/A 2026-02-01, none', 'chill PAR-26/A 2026-02-03, 4 C', 'move PAR-26/A 2026-02-10, at box 2']) {
      expect(reminders(due + record), record).toEqual([]);
    }
  });

  it('is not done by a count, a photo or another reminder, by what came before it or is yet to come, or by another batch', () => {
    const records = [
      'count PAR-26/A 2026-02-01, 0', 'photo PAR-26/A 2026-02-01, a.png', 'note PAR-26/A 2026-01-31, all well',
      'note PAR-26/A 2026-02-11, none', 'note PAR-26/B 2026-02-01, none', 'note PAR-26 2026-02-01, none',
    ];
    for (const record of records) expect(reminders(due + record), record).toEqual(['overdue: 2026-02-01 reminder PAR-26/A']);
    expect(reminders(`${due}due PAR-26/A 2026-02-20, again`))
      .toEqual(['overdue: 2026-02-01 reminder PAR-26/A', 'later: 2026-02-20 reminder PAR-26/A']);
  });

  it('about a lot is answered by a record about a part of it', () => {
    const about = 'due PAR-26 2026-02-01, into the fridge\n';
    expect(reminders(about)).toHaveLength(1);
    expect(reminders(`${about}chill PAR-26/B 2026-02-02, 4 C`)).toEqual([]);
  });

  it('is moot once the batch is closed, unless it stands below the closing record', () => {
    const closing = 'discard PAR-26/A 2026-01-20, soft\n';
    expect(reminders(due + closing)).toEqual([]);
    expect(reminders(closing + due)).toEqual(['overdue: 2026-02-01 reminder PAR-26/A']);
    expect(reminders(`${due}discard PAR-26/A 2026-02-20, soft\n`)).toHaveLength(1);
  });

  it('about a lot is moot once all of its parts are closed', () => {
    const about = 'due PAR-26 2026-03-01, into the fridge\n';
    const one = 'discard PAR-26/A 2026-01-20, soft\n';
    expect(reminders(about + one)).toHaveLength(1);
    expect(reminders(`${about}${one}discard PAR-26/B 2026-01-20, soft\n`)).toEqual([]);
  });

  it('may be about a stock or a regime, and is answered by a note on it', () => {
    const source = `stock G1 2026-01-09, GA3 20 mg, 20 mL
regime woodland, warm 20 C 12 weeks
due G1 2026-02-01, look for flakes
due woodland 2026-02-02, ask about the warm stage
`;
    expect(dueOf(source, '2026-02-10', 'reminder'))
      .toEqual(['overdue: 2026-02-01 reminder G1', 'overdue: 2026-02-02 reminder woodland']);
    expect(dueOf(`${source}note G1 2026-02-03, clear`, '2026-02-10', 'reminder'))
      .toEqual(['overdue: 2026-02-02 reminder woodland']);
  });
});
