import { describe, expect, it } from 'vitest';
import { countingRound, roundInCold } from '../../server/src/calendar/counting-round.ts';
import { journalOf, moment } from './helpers.ts';

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
