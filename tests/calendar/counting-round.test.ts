import { describe, expect, it } from 'vitest';
import { countingRound, roundInCold, roundLeftOff } from '../../server/src/calendar/counting-round.ts';
import { journalOf, moment } from './helpers.ts';
import { everythingDue } from '../../server/src/calendar/due.ts';

const journal = journalOf(`
  lot A Iris alba, 30 seeds
  split A, B 10 seeds, C 10 seeds, D 10 seeds
  sow A/B 2026-01-01, at bag 10 slot 2
  sow A/C 2026-01-01, at bag 2 slot 10
  sow A/D 2026-01-01
  lot A0 Paris polyphylla
  sow A0 2026-01-20
  lot E Paris polyphylla, 10 seeds
  sow E 2026-01-01, at Bag 2 slot 9
  lot F Paris polyphylla, 10 seeds
  sow F 2026-01-01, at bag 1
  discard F 2026-01-10, soft
  lot G Paris polyphylla, 10 seeds, at bag 1
  soak G 2026-01-20 19:00, water
  lot H Paris polyphylla, 10 seeds
  sow H 2026-01-01, at bag 1
  count H 2026-01-20, 0
`);
const lines = (now: string) => countingRound(journal, moment(now)).map(({ line, place }) => `${line}@ ${place ?? '?'}`);

describe('the counting round', () => {
  it('has a line for each batch that can still change, by place and by id, those of no known place at the end', () => {
    expect(lines('2026-01-19')).toEqual([
      'count H, @ bag 1', 'count E, @ Bag 2 slot 9', 'count A/C, @ bag 2 slot 10', 'count A/B, @ bag 10 slot 2', 'count A/D, @ ?',
    ]);
  });

  it('has seed in a damp towel that is watched, and neither what waits in the cold nor what lies dry', () => {
    const bag = journalOf(`
      lot A Iris alba, 60 seeds, at tin 1
      split A, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds
      chill A/B 2026-01-01, 4 C, at bag 1 slot 10
      count A/B 2026-01-15, 0
      chill A/C 2026-01-01, 4 C, at bag 1 slot 9
      warm A/D 2026-01-01, 20 C, at bag 1 slot 8
      chill A/E 2026-01-01, 4 C, at bag 1 slot 7
      count A/E 2026-01-15, 7, 3 rotted
      pot A/E 2026-01-15, 7 seedlings
    `);
    expect(countingRound(bag, moment('2026-01-20')).map(({ line, place }) => `${line}@ ${place ?? '?'}`)).toEqual([
      'count A/D, @ bag 1 slot 8', 'count A/B, @ bag 1 slot 10',
    ]);
  });

  it('leaves unsown seed to the round in the cold until somebody counts it', () => {
    const bag = journalOf(`
      lot A Iris alba, 80 seeds
      split A, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds, F 10 seeds, G 10 seeds, H 10 seeds
      chill A/B 2026-01-02, 4 C, 8 weeks, at bag 1 slot 10
      chill A/C 2026-01-02, 4 C, 8 weeks, at bag 1 slot 9
      chill A/D 2026-01-02, 4 C, 8 weeks, at bag 1 slot 8
      count A/D 2026-01-15, 0
      chill A/E 2026-01-02, 4 C, 8 weeks, at bag 1 slot 7
      warm A/E 2026-01-15, 20 C
      sow A/F 2026-01-01, at tray 1
      chill A/F 2026-01-02, 4 C, 8 weeks
      soak A/G 2026-01-02 19:00, water, 24 h
      chill A/H 2026-01-02, 4 C, 8 weeks
      discard A/H 2026-01-03, soft
    `);
    const at = moment('2026-01-20');
    expect(roundInCold(bag, at).map(({ line, place }) => `${line}@ ${place}`)).toEqual(['count A/C, @ bag 1 slot 9', 'count A/B, @ bag 1 slot 10']);
    expect(countingRound(bag, at).map(({ line }) => line)).toEqual(['count A/E, ', 'count A/D, ', 'count A/F, ']);
    expect(roundInCold(bag, moment('2026-01-01'))).toEqual([]);
  });

  it('leaves out what has been counted on that day', () => {
    expect(lines('2026-01-20').slice(-2)).toEqual(['count A/D, @ ?', 'count A0, @ ?']);
    expect(lines('2026-01-20')).not.toContain('count H, @ bag 1');
    expect(lines('2026-01-21')).toContain('count H, @ bag 1');
  });

  it('has what was open on that day, and nothing before the first sowing', () => {
    expect(lines('2026-01-05')).toContain('count F, @ bag 1');
    expect(lines('2025-12-31')).toEqual([]);
  });
});

describe('batches that nobody wrote of for more than 400 days', () => {
  // From 2026-01-10 to 2027-02-15 are 401 days.
  const left = journalOf(`
    regime cold, chill 4 C 90 days
    lot A Iris alba, 200 seeds
    split A, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds, F 10 seeds, G 10 seeds, H 10 seeds, I 10 seeds, J 10 seeds
    sow A/B 2025-12-01, at shelf 1 slot 1
    count A/B 2026-01-10, 1
    sow A/C 2025-12-01, at shelf 1 slot 2
    count A/C 2026-01-11, 1
    sow A/D 2026-01-10, outdoors, at frame 1
    sow A/E 2026-01-10, outdoors, look again 2027-03-01, at frame 2
    sow A/F 2026-01-10, regime cold, at bag 1
    chill A/G 2026-01-10, 4 C, at bag 2
    chill A/H 2026-01-10, 4 C, 14 months, at bag 3
    sow A/I 2025-12-01, at shelf 1 slot 3
    count A/I 2026-01-10, 1
    due A/I 2027-03-01, look for the second leaf
    sow A/J 2025-12-01, at shelf 1 slot 4
    count A/J 2026-01-10, 1
    note A/J 2026-11-01, moved the shelf
  `);
  const at = moment('2027-02-15');

  it('are in no round but their own, unless a stage, a look, a plan or a note shows that they are not forgotten', () => {
    // The cold of A/F ended on 2026-04-10, that of A/H ends on 2027-03-10.
    expect(countingRound(left, at).map(({ line }) => line)).toEqual(['count A/F, ', 'count A/E, ', 'count A/C, ', 'count A/I, ', 'count A/J, ']);
    expect(roundInCold(left, at).map(({ line }) => line)).toEqual(['count A/H, ']);
    expect(roundLeftOff(left, at).map(({ line }) => line)).toEqual(['count A/G, ', 'count A/D, ', 'count A/B, ']);
  });

  it('are each put apart in the list, also those that owed no count before', () => {
    const listed = (group: 'long ago' | 'overdue') => everythingDue(left, at).filter(item => item.group === group).map(({ kind, id }) => `${kind} ${id}`);
    expect(listed('long ago').sort()).toEqual(['count A/B', 'count A/D', 'count A/G']);
    expect(listed('overdue').sort()).toEqual(['count A/C', 'count A/F', 'count A/I', 'count A/J', 'stage A/F']);
  });

  it('are looked after again once there is a record of them', () => {
    const again = journalOf('lot A Iris alba, 9 seeds\nsow A 2024-01-10, at shelf 1\nnote A 2027-02-01, found it again');
    expect(countingRound(again, at).map(({ line }) => line)).toEqual(['count A, ']);
    expect(roundLeftOff(again, at)).toEqual([]);
  });
});
