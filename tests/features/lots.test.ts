import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeLot, lotRows } from '../../server/src/features/lots.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { doTo, step, text } from '../support/arbitrary-edits.ts';
import { readFixture } from '../support/fixture.ts';
import { at, journalOf } from './journals.ts';

function told(journal: Journal, now: string): unknown[] {
  return lotRows(journal, at(now)).map(({ lot: { id }, stateText, shares, verdicts, winters }) =>
    [id, stateText, shares, verdicts, winters]);
}

test('lots stand by plant and id, each with where it stands, what it came to and when it was begun', () => {
  const journal = journalOf(readFixture(`
    lot S-1, 20 seeds
    lot V-10 Veratrum nigrum, 60 seeds
    lot V-2 veratrum  nigrum, 60 seeds
    lot G-1 Gentiana lutea, 60 seeds
    split G-1, A 24 seeds, B 24 seeds
    soak G-1/A 2025-11-01 19:00, GA3 500 ppm, 24 h
    soak G-1/B 2025-11-01 19:00, water, 24 h
    sow G-1/A 2025-11-02 19:00
    sow G-1/B 2025-11-02 19:00
    count G-1/A 2025-12-01, 20
    count G-1/B 2025-12-01, 2
    sow V-2 2025-06-01
    sow S-1 2026-01-02 09:00
  `));
  const rows = [
    ['G-1', '2 of 2 open: sown, day 61', ['untreated: 2 of 24 = 8.3 %', 'GA3 500 ppm 24 h: 20 of 24 = 83.3 %'], undefined, ['2025/26']],
    ['V-2', 'sown, day 215', [], undefined, ['2024/25']],
    ['V-10', 'not begun', [], undefined, []],
  ];
  expect(told(journal, '2026-01-02 08:00')).toEqual([...rows, ['S-1', 'not begun', [], undefined, ['2025/26']]]);
  expect(told(journal, '2026-01-02 09:00')).toEqual([...rows, ['S-1', 'sown, day 0', [], undefined, ['2025/26']]]);
});

test('south of the equator a winter is a year, and a zone that is written later moves the lots', () => {
  const journal = new Journal();
  const lots = 'lot V-1 Iris, 20 seeds\nsow V-1 2026-05-20\nlot V-2 Iris, 20 seeds\nsow V-2 2026-08-20\n';
  const winters = () => lotRows(journal, at('2026-09-01')).map(row => row.winters);
  journal.set('a.germ', lots);
  expect(winters()).toEqual([['2025/26'], ['2026/27']]);
  journal.set('a.germ', `zone Pacific/Auckland\n${lots}`);
  expect(winters()).toEqual([['2026'], ['2026']]);
});

test('a verdict stays in the row of a lot once it was judged, until something is written of the lot', () => {
  const { files: [file] } = readFixture(`
    lot L Iris, 20 seeds
    lot G-1 Gentiana lutea, 60 seeds
    split G-1, A 24 seeds, B 24 seeds
    soak G-1/A 2025-11-01 19:00, GA3 500 ppm, 24 h
    soak G-1/B 2025-11-01 19:00, water, 24 h
    sow G-1/A 2025-11-02 19:00
    sow G-1/B 2025-11-02 19:00
    count G-1/A 2025-12-01, 20
    count G-1/B 2025-12-01, 2
  `);
  const { name, text: written } = file!;
  const journal = new Journal();
  journal.set(name, written);
  const verdicts = () => lotRows(journal, at('2026-01-02')).map(row => row.verdicts);
  expect(verdicts()).toEqual([undefined, undefined]);
  expect(judgeLot(journal, 'G-1', Infinity)).toEqual(['worth repeating so far']);
  expect(judgeLot(journal, 'X', Infinity)).toEqual([]);
  expect(verdicts()).toEqual([['worth repeating so far'], undefined]);
  journal.set(name, `${written}count L 2026-01-01, 3\n`);
  expect(verdicts()).toEqual([['worth repeating so far'], undefined]);
  journal.set(name, written.replace('A 2025-12-01, 20', 'A 2025-12-01, 2'));
  expect(verdicts()).toEqual([undefined, undefined]);
  expect(judgeLot(journal, 'G-1', Infinity)).toEqual(['cannot tell yet']);
});

test('a lot of which seed was begun in several winters stands in each, the latest first', () => {
  const journal = journalOf(readFixture('lot L Iris, 20 seeds\nsplit L, A 10 seeds, B 10 seeds\nsow L/A 2023-11-01\nsow L/B 2025-11-01'));
  expect(lotRows(journal, at('2026-01-01')).map(({ winters }) => winters)).toEqual([['2025/26', '2023/24']]);
});

test('the list of a journal that is edited is that of one that is read afresh', () => {
  const listOf = (journal: Journal, day: number) => lotRows(journal, { day, minutes: 600 })
    .map(({ lot: { id, plant }, ...row }) => ({ ...row, id, plant, verdicts: judgeLot(journal, id, Infinity) }));
  const journals = fc.array(text, { minLength: 1, maxLength: 3 });
  fc.assert(fc.property(journals, fc.array(step, { maxLength: 12 }), (files, steps) => {
    const journal = new Journal();
    files.forEach((each, index) => journal.set(`${'cab'[index]!}.germ`, each));
    let day = dayOf(2026, 1, 12)!;
    let settings = {};
    listOf(journal, day);
    for (const each of steps) {
      doTo(journal, each);
      if (each.kind === 'settings') settings = { soakHours: each.soakHours };
      if (each.kind === 'time') day += each.days;
      if (each.kind === 'check') listOf(journal, day);
    }
    const fresh = new Journal();
    fresh.settings = settings;
    for (const [name, { text: store }] of journal.files) fresh.set(name, store.text());
    expect(listOf(journal, day)).toEqual(listOf(fresh, day));
  }), { numRuns: 60 });
});
