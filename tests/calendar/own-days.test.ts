import { expect, it } from 'vitest';
import { daysToLeaf } from '../../server/src/calendar/own-days.ts';
import { journalOf } from './helpers.ts';

const batch = (id: string, plant: string, ...counts: string[]) =>
  [`lot ${id} ${plant}, 20 seeds`, `sow ${id} 2026-01-01`, ...counts.map(count => `count ${id} ${count}`), ''].join('\n');

const journal = journalOf([
  batch('P1', 'Paris polyphylla', '2026-02-01, 2', '2026-03-01, 1 leaf'),
  batch('P2', 'Paris Polyphylla', '2026-02-01, 2', '2026-02-11, 3', '2026-04-12, 1 leaf'),
  batch('P3', 'Paris polyphylla', '2026-02-01, 2', '2026-02-21, 1 leaf'),
  batch('P4', 'Paris quadrifolia', '2026-01-20, 0', '2026-02-01, 2', '2026-02-11, 1 leaf'),
  batch('P5', 'Paris quadrifolia', '2026-02-01, 2 leaf'),
  batch('P6', 'Parish polyphylla', '2026-02-01, 2', '2026-02-02, 1 leaf'),
].join(''));

it('the days to a first leaf are those of the plant, the middle one with the extremes', () => {
  expect(daysToLeaf(journal, 'Paris polyphylla')).toEqual({ median: 28, least: 20, most: 70, batches: 3, of: 'Paris polyphylla' });
});

it('a leaf that was found together with the germination says nothing', () => {
  expect(daysToLeaf(journal, 'Paris quadrifolia')).toMatchObject({ median: 10, batches: 1 });
});

it('without records of the plant those of its genus are given, and named so', () => {
  expect(daysToLeaf(journal, 'Paris tetraphylla')).toEqual({ median: 24, least: 10, most: 70, batches: 4, of: 'Paris' });
});

it('they count from the end of the last stage that had begun, where that is later than the germination', () => {
  // Germinated on 1 February, a leaf on 1 April.
  const days = (...stages: string[]) => daysToLeaf(journalOf(batch('T', 'Trillium luteum', '2026-02-01, 2', '2026-04-01, 1 leaf')
    + stages.map(stage => stage.replace(' ', ' T ')).join('\n')), 'Trillium luteum')?.median;
  // 28 days of February and 31 of March.
  expect(days()).toBe(59);
  // To 11 March by its own length, or to the next stage; the one without a length goes on.
  expect(days('chill 2026-02-09, 4 C, 30 days')).toBe(21);
  expect(days('chill 2026-02-09, 4 C, 60 days', 'warm 2026-03-11, 20 C, 1 day')).toBe(20);
  expect(days('chill 2026-02-09, 4 C, 60 days')).toBe(0);
  expect(days('chill 2026-02-09, 4 C')).toBe(0);
  // One that begins on the day of the leaf, and one that begins a day later.
  expect(days('chill 2026-04-01, 4 C, 30 days')).toBe(0);
  expect(days('chill 2026-04-02, 4 C, 30 days')).toBe(59);
});

it('without any they are undefined', () => {
  expect(daysToLeaf(journal, 'Trillium luteum')).toBeUndefined();
});
