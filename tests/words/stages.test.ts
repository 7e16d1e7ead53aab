import { expect, test } from 'vitest';
import { plannedEnd, stageProgressText, stageText } from '../../server/src/words/stages.ts';
import type { Stage } from '../../server/src/journal/life.ts';
import { isoOf } from '../../server/src/model/day.ts';
import { readFixture } from '../support/fixture.ts';
import { at, journalOf } from '../features/journals.ts';

/** The first stage of the lot X. */
function stageOf(lines: string): Stage {
  return journalOf(readFixture(`lot X Primula japonica, 20 seeds\n${lines}`)).lot('X')!.root.stages[0]!;
}

test.each([
  ['with its temperature and its length', 'chill X 2026-01-01, 4 C, 90 days', '4 C 90 days'],
  ['with two temperatures', 'warm X 2026-01-01, 20/10 C, 12 weeks', '20/10 C 12 weeks'],
  ['by its kind where no temperature is written', 'chill X 2026-01-01, 3 months', 'chill 3 months'],
  ['with the days that it had where none were planned', 'chill X 2026-01-01, 4 C\nwarm X 2026-02-10, 20 C', '4 C 40 days'],
  ['without a length while none is known', 'chill X 2026-01-01, 4 C', '4 C'],
])('a stage is named %s', (_, lines, text) => {
  expect(stageText(stageOf(lines))).toBe(text);
});

test.each([
  ['some of the days planned', 'chill X 2026-01-01, 4 C, 90 days', '4 C for 63 of 90 days'],
  ['days where none are planned', 'chill X 2026-01-01, 4 C', '4 C for 63 days'],
  ['all of them', 'chill X 2026-01-01, 4 C, 9 weeks', '4 C for 63 days'],
  ['more than planned', 'chill X 2026-01-01, 4 C, 60 days', '4 C for 63 days (60 planned)'],
  ['calendar months', 'chill X 2026-01-01, 4 C, 3 months', '4 C for 63 of 90 days'],
  ['ended before', 'chill X 2026-01-01, 4 C, 90 days\nwarm X 2026-02-01, 20 C', '4 C for 31 of 90 days'],
  ['to end later, which is not counted yet', 'chill X 2026-01-01, 4 C, 90 days\nwarm X 2026-04-01, 20 C', '4 C for 63 of 90 days'],
  ['begun on the day itself', 'chill X 2026-03-05, 4 C, 90 days', '4 C for 0 of 90 days'],
  ['still to come', 'chill X 2026-03-06, 4 C, 90 days', '4 C 90 days to come'],
])('a stage has gone on for %s', (_, lines, text) => {
  expect(stageProgressText(stageOf(lines), at('2026-03-05').day)).toBe(text);
});

test('a stage is to end when its length is over', () => {
  expect(isoOf(plannedEnd(stageOf('chill X 2026-01-01, 4 C, 90 days'))!)).toBe('2026-04-01');
  expect(plannedEnd(stageOf('chill X 2026-01-01, 4 C'))).toBeUndefined();
});
