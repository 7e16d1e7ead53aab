import { expect, it } from 'vitest';
import { daysToLeaf } from '../../server/src/calendar/own-days.ts';
import { journalOf } from './helpers.ts';

const batch = (id: string, plant: string, ...counts: string[]) =>
  [`lot ${id} ${plant}, 20 seeds`, `sow ${id} 2026-01-01`, ...counts.map(count => `count ${id} ${count}`), ''].join('\n');

const journal = journalOf([
  batch('P1', 'Paris polyphylla', '2026-02-01, 2', '2026-03-01, 1 leaf'),
  batch('P2', 'Paris Polyphylla', '2026-02-01, 2', '2026-02-11, 3', '2026-04-12, 1 leaf'),
  batch('P3', 'Paris polyphylla', '2026-02-01, 2', '2026-02-21, 1 leaf'),
  batch('P4', 'Paris quadrifolia', '2026-02-01, 2', '2026-02-11, 1 leaf'),
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

it('without any they are undefined', () => {
  expect(daysToLeaf(journal, 'Trillium luteum')).toBeUndefined();
});
