import { expect, test } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { lotState, shareTexts, verdictTexts } from '../../server/src/words/lot-line.ts';
import { at } from '../features/journals.ts';
import { tenWinters } from '../support/ten-winters.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { journalOf, lotOf, twoBatches } from '../trials/helpers.ts';

function states(journal: Journal, now: string): string[] {
  return [...journal.lots()].map(lot => {
    const { state, text } = lotState(lot, at(now));
    return `${lot.id} ${state}: ${text}`;
  });
}

const sown = 'lot L Iris, 60 seeds\nsplit L, A 20 seeds, B 20 seeds\nsow L/A 2026-01-11\nsow L/B 2026-01-11\n';

test.each([
  ['nothing was done to it', 'lot L Iris, 60 seeds\nnote L 2026-01-02, hard', '2026-02-01', 'L not begun: not begun'],
  ['the sowing is only planned', sown, '2026-01-10', 'L not begun: not begun'],
  ['there is a single batch', 'lot L Iris, 60 seeds\nsow L 2026-01-11', '2026-02-01', 'L open: sown, day 21'],
  ['all batches stand alike', sown, '2026-02-01', 'L open: 2 of 2 open: sown, day 21'],
  ['one batch is closed', `${sown}discard L/B 2026-01-20`, '2026-02-01', 'L open: 1 of 2 open: sown, day 21'],
  ['batches stand apart', `${sown}chill L/B 2026-01-20, 4 C, 60 days`, '2026-02-01', 'L open: 2 of 2 open'],
  ['all is closed', `${sown}discard L/A 2026-01-20\ndiscard L/B 2026-01-20`, '2026-02-01', 'L closed: all closed'],
  ['the only batch was closed', 'lot L Iris, 60 seeds\nsow L 2026-01-11\ndiscard L 2026-01-20', '2026-02-01', 'L closed: closed 2026-01-20 by discard'],
  ['all of it germinated, died or rotted', 'lot L Iris, 6 seeds\nsow L 2026-01-11\ncount L 2026-02-01, 2 germinated, 4 rotted, 2 died', '2026-02-02', 'L closed: closed'],
  ['all of it rotted in the cold, unsown', 'lot L Iris, 6 seeds\nchill L 2026-01-11, 4 C\ncount L 2026-02-01, 6 rotted', '2026-02-02', 'L closed: closed'],
  ['nothing was written for over a year', sown, '2027-06-01', 'L left off: no record since 2026-01-11'],
])('where a lot stands, when %s', (_, source, now, expected) => {
  expect(states(journalOf(source), now)).toEqual([expected]);
});

test('of ten winters only the last is open, whatever nobody closed', () => {
  const journal = new Journal();
  for (const { name, text } of tenWinters()) journal.set(name, text);
  const open = states(journal, '2026-03-20').filter(text => text.includes(' open: '));
  expect(open.map(text => text.split(' ')[0])).toEqual(['A25', 'C25', 'D25', 'E25', 'F25']);
});

test('untreated seed stands first, then each treatment, dishes that were treated alike as one', () => {
  expect(shareTexts(lotOf(twoBatches()), Infinity)).toEqual(['untreated: 5 of 20 = 25 %', 'GA3 500 ppm 24 h: 15 of 20 = 75 %']);
  expect(shareTexts(lotOf(`
    lot L Iris alba, 60 seeds
    split L, A 20 seeds, B 20 seeds, C 20 seeds
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, GA3 500 ppm, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00
    sow L/C 2026-01-11 19:00
    count L/A 2026-02-10, 9, 1 lost
    count L/B 2026-02-10, 8
    count L/C 2026-02-10, 1
  `), Infinity)).toEqual(['untreated: 1 of 20 = 5 %', 'GA3 500 ppm 24 h: 17 of 39 = 43.6 %']);
});

test('a share is told without a name where no seed was treated, and as a range where its seeds were estimated', () => {
  expect(shareTexts(lotOf('lot L Iris alba, 60 seeds\nsow L 2026-01-11\ncount L 2026-02-10, 6'), Infinity)).toEqual(['6 of 60 = 10 %']);
  expect(shareTexts(lotOf('lot L Iris alba, about 40 seeds\nsow L 2026-01-11\ncount L 2026-02-10, 11'), Infinity)).toEqual(['11 of 36 to 44 = 25 to 30.6 %']);
});

test('seed of unknown number is told by what germinated, and seed that was not counted not at all', () => {
  expect(shareTexts(lotOf('lot L Iris alba\nsow L 2026-01-11\ncount L 2026-02-10, 4'), Infinity)).toEqual(['4 germinated']);
  expect(shareTexts(lotOf('lot L Iris alba, 9 seeds\nsow L 2026-01-11'), Infinity)).toEqual([]);
});

test('batches whose conditions differ, or whose seed was scarified or treated late, are told apart by name', () => {
  const two = (facts: string) => `
    lot L Iris alba, 60 seeds
    split L, A 20 seeds, B 20 seeds
    ${facts}
    sow L/A 2026-01-11, 15 C
    sow L/B 2026-01-11, 15 C
    count L/A 2026-02-10, 17
    count L/B 2026-02-10, 3
  `;
  expect(shareTexts(lotOf(two('')), Infinity)).toEqual(['20 of 40 = 50 %']);
  expect(shareTexts(lotOf(two('scarify L/A 2026-01-10, nicked')), Infinity)).toEqual(['A: 17 of 20 = 85 %', 'B: 3 of 20 = 15 %']);
  const late = `${two('')}\nsoak L/A 2026-02-10 19:00, GA3 500 ppm, 24 h\ncount L/A 2026-03-10, 1\ncount L/B 2026-03-10, 1`;
  expect(shareTexts(lotOf(late), Infinity)).toEqual(['untreated: 4 of 20 = 20 %', 'GA3 500 ppm 24 h: 18 of 20 = 90 %']);
});

test('of many parts the first are told, and how many more there are', () => {
  const names = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];
  const lines = names.flatMap((name, n) => [`sow L/${name} 2026-01-11, ${10 + 3 * n} C`, `count L/${name} 2026-03-10, ${n}`]);
  const texts = shareTexts(lotOf(['lot L Iris, 90 seeds', `split L, ${names.map(name => `${name} 10 seeds`).join(', ')}`, ...lines].join('\n')), Infinity);
  expect(texts).toEqual([...names.slice(0, 6).map((name, n) => `${name}: ${n} of 10 = ${n * 10} %`), '2 more']);
});

test('seed that was split off from what had been counted is told apart from it', () => {
  expect(shareTexts(lotOf(`
    lot L Iris alba, 20 seeds
    sow L 2026-01-11
    count L 2026-02-10, 5
    split L 2026-02-11, A 10 seeds
    count L/A 2026-03-10, 3
  `), Infinity)).toEqual(['the rest: 5 of 20 = 25 %', 'A: 3 of 10 = 30 %']);
});

test('a verdict is told in the words of the report, once for each treatment that was compared', () => {
  expect(verdictTexts(lotOf(twoBatches()), Infinity)).toEqual(['worth repeating']);
  expect(verdictTexts(lotOf(twoBatches({ soakA: 'water, 24 h' })), Infinity)).toEqual([]);
});

test.each([
  ['all their numbers give the same verdict', 'about 40 seeds', '20 germinated, 1 rotted', '0', 'worth repeating so far (seeds estimated)'],
  ['the verdict hangs on their number', '30 to 60 seeds', '9', '2', 'cannot tell (seeds estimated)'],
])('estimated seed has its verdict, if %s', (_, seeds, a, b, expected) => {
  const lot = lotOf(`
    lot L Iris alba, ${seeds}
    split L, A half, B half
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00
    count L/A 2026-02-10, ${a}
    count L/B 2026-02-10, ${b}
  `);
  const [contest] = trialOf(lot, Infinity).estimated;
  const words = contest!.verdict.sentence.split(':')[0]!;
  expect(verdictTexts(lot, Infinity)).toEqual([expected]);
  // The report begins with the same words.
  expect(expected.startsWith(words.toLowerCase())).toBe(true);
});

test('estimated seed with nothing to compare it with has no verdict', () => {
  expect(verdictTexts(lotOf(`
    lot L Iris alba, about 40 seeds
    soak L 2026-01-10 19:00, GA3 500 ppm, 24 h
    sow L 2026-01-11 19:00
    count L 2026-02-10, 6
  `), Infinity)).toEqual([]);
});
