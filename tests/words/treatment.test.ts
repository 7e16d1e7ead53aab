import { expect, test } from 'vitest';
import { treatmentText } from '../../server/src/words/treatment.ts';
import { readFixture } from '../support/fixture.ts';
import { journalOf } from '../features/journals.ts';

function treatment(lines: string, path = 'X'): string {
  return treatmentText(journalOf(readFixture(`lot X Primula japonica, 20 seeds\n${lines}`)).lot('X')!.batches.get(path)!);
}

test.each([
  ['untreated where nothing was done', 'note X 2026-01-01, hard', 'untreated'],
  ['untreated where it was only sown and counted', 'sow X 2026-01-01, 18 C\ncount X 2026-02-01, 3', 'untreated'],
  ['a soak with its length', 'soak X 2026-01-01, GA3 500 ppm, 24 h', 'GA3 500 ppm 24 h'],
  ['a soak that goes on', 'soak X 2026-01-01, GA3 500 ppm', 'GA3 500 ppm (no end recorded)'],
  [
    'soaks, scarification and stages in the order of time',
    'chill X 2026-01-03, 4 C, 90 days\nscarify X 2026-01-01, nicked\nsoak X 2026-01-02, water, 12 h',
    'scarified, then water 12 h, then 4 C 90 days',
  ],
])('a batch is %s', (_, lines, text) => {
  expect(treatment(lines)).toBe(text);
});

test('a batch is treated with what was done before it was split off', () => {
  const lines = 'soak X 2026-01-01, water, 24 h\nsplit X 2026-01-03, A 10 seeds\nchill X/A 2026-01-04, 4 C, 90 days\nsoak X 2026-01-05, GA3 500 ppm, 12 h';
  expect(treatment(lines, 'X/A')).toBe('water 24 h, then 4 C 90 days');
  expect(treatment(lines, 'X')).toBe('water 24 h, then GA3 500 ppm 12 h');
});

test('batches of one true strength are treated alike, be it from a stock or not', () => {
  const stock = 'stock G1 2026-01-01, GA3 10 mg, 20 mL';
  expect(treatment(`${stock}\nsoak X 2026-01-02, G1 5 mL, 24 h`)).toBe(treatment('soak X 2026-01-02, GA3 500 ppm, 24 h'));
});
