import { expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

test('a lot whose id was forgotten is one mistake, at the name of the genus', () => {
  expectAllMarked(`
    lot Lilium regale, 40 seeds, collected 2025-09
        ^^^^^^ missing-subject
  `);
});

test('an id is offered: letters of the genus with the year of the harvest, or a number, that nothing else has', () => {
  const offered = (source: string) => problemsIn('missing-subject', source).flatMap(({ fixes }) => fixes.map(({ text }) => text));
  expect(offered('lot Lilium regale, 40 seeds, collected 2025-09')).toEqual(['LIL-25 ']);
  expect(offered('lot Lilium regale, 40 seeds\nlot LIL-1 Lilium regale')).toEqual(['LIL-1-2 ']);
  expect(problemsIn('missing-subject', 'lot Lilium regale')[0]!.message)
    .toBe('“lot” needs an id and then the plant’s name after it. For example: lot LIL-1 Lilium regale.');
});

test('a name that other records use is an id, and so is one that looks like none of a genus', () => {
  expectAllMarked(`
    lot Lilium regale, 40 seeds
    sow Lilium 2026-01-11, 20 seeds
    lot LIL-25 Lilium regale, 40 seeds
    lot Tin Lilium regale, 40 seeds
    lot tray primroses, 40 seeds
  `, { now: '2026-01-12' });
});

test.each([
  ['Rosa canina', true], ['Ros canina', false], ['ROSA canina', false], ['rosa canina', false], ['Rosa9 canina', false],
  ['Rosa aff', true], ['Rosa af', false], ['Rosa Canina', false], ['Rosa canina alba', true], ['Rosa uva-ursi', true],
  ['Rosa can.', false], ['Čelest švestka', true],
])('“lot %s” lacks its id: %s', (named, lacks) => {
  expect(problemsIn('missing-subject', `lot ${named}, 40 seeds`)).toHaveLength(lacks ? 1 : 0);
});
