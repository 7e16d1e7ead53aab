import { expect, test } from 'vitest';
import { stagesOf } from '../../server/src/calendar/regime-match.ts';
import { guideSoaks, ownLeafDays, startOf, wantedOf, when, type Fixed, type LeafDays } from '../../server/src/calendar/when.ts';
import { printQuantity } from '../../server/src/model/quantity.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { day, iso, journalOf } from './helpers.ts';

const cold = stagesOf(parse('regime r, chill 4 C 90 days').record!);

/** Soak, sowing, end and leaves of the schedule, and of the one that is begun today. */
function dates(by: Fixed['by'], on: string, today = '2026-01-01', leaf?: LeafDays, stages = cold) {
  const fixed = { by, day: day(on) };
  const { schedule, begunToday } = when({ stages, fixed, soak: { value: 24, unit: 'h' }, leaf, today: day(today) });
  return [schedule, begunToday].map(each => (
    each && 'sow' in each ? [...[startOf(each), each.sow, each.end, wantedOf(each, fixed)].map(iso)].join(' ') : each));
}
const leaf = { days: 21, own: undefined };

test('a plan is laid out from the day that fixes it', () => {
  // 90 days from 11 January: 20 of January, 28 of February, 31 of March, 11 of April. 21 days more end on 2 May.
  expect(dates('sowing', '2026-01-11')[0]).toBe('2026-01-10 2026-01-11 2026-04-11 2026-04-11');
  expect(dates('start', '2026-01-10')[0]).toBe('2026-01-10 2026-01-11 2026-04-11 2026-04-11');
  expect(dates('end', '2026-04-11', undefined, leaf)[0]).toBe('2026-01-10 2026-01-11 2026-04-11 2026-04-11');
  expect(dates('leaf', '2026-05-02', undefined, leaf)[0]).toBe('2026-01-10 2026-01-11 2026-04-11 2026-05-02');
});

test('a plan for a wanted day that should have begun already is also laid out from today', () => {
  expect(dates('end', '2026-04-11', '2026-01-10')[1]).toBeUndefined();
  expect(dates('end', '2026-04-11', '2026-01-11')[1]).toBe('2026-01-11 2026-01-12 2026-04-12 2026-04-12');
  expect(dates('leaf', '2026-05-02', '2026-01-11', leaf)[1]).toBe('2026-01-11 2026-01-12 2026-04-12 2026-05-03');
  for (const by of ['sowing', 'start'] as const) expect(dates(by, '2026-01-11', '2026-02-01')[1], by).toBeUndefined();
});

test('without the days to a leaf, or the length of a stage, there is a reason and no date', () => {
  const reason = { undefined: 'the days from germination to a first leaf are unknown' };
  expect(dates('leaf', '2026-05-02', '2026-03-01')).toEqual([reason, undefined]);
  const open = stagesOf(parse('regime r, chill 4 C').record!);
  for (const by of ['end', 'sowing', 'start'] as const) {
    expect(dates(by, '2026-05-02', '2026-06-01', undefined, open), by)
      .toEqual([{ undefined: 'stage 1 of the regime (chill) has no length' }, undefined]);
  }
});

test('the own days to a leaf are rounded up', () => {
  // 10 and 13 days, so 11.5 in the middle.
  const journal = journalOf(['11', '14'].map((on, i) =>
    `lot L${i} Iris alba\nsow L${i} 2026-01-01\ncount L${i} 2026-02-01, 1\ncount L${i} 2026-02-${on}, 1 leaf\n`).join(''));
  expect(ownLeafDays(journal, 'Iris alba')).toMatchObject({ days: 12, own: { median: 11.5 } });
  expect(ownLeafDays(journal, undefined)).toEqual({ undefined: 'no plant is named' });
  expect(ownLeafDays(journal, 'Paris')).toHaveProperty('undefined');
});

test('guides give each length of soak once, but for one that comes after a stage', () => {
  const journal = journalOf(`
    guide Iris, 24 h, chill 4 C 12 weeks
    guide Iris alba, 24 h
    guide Iris alba, 48 h, chill 4 C 12 weeks
    guide Iris alba, chill 4 C 12 weeks, 12 h
  `);
  expect(guideSoaks(journal, 'Iris alba').map(({ soak, guides }) => [printQuantity(soak), guides.length])).toEqual([['24 h', 2], ['48 h', 1]]);
});
