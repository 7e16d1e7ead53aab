import { describe, expect, it } from 'vitest';
import { countingRound } from '../../server/src/calendar/counting-round.ts';
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
