import { expect, test } from 'vitest';
import { lifeLine } from '../../server/src/words/life-line.ts';
import { readFixture } from '../support/fixture.ts';
import { at, journalOf } from '../features/journals.ts';

function life(lines: string, now = '2026-03-25', path = 'X'): string | undefined {
  const journal = journalOf(readFixture(`zone Europe/Vienna\nlot X Primula japonica, 20 seeds\n${lines}`));
  return lifeLine(journal.lot('X')!.batches.get(path)!, journal, at(now));
}

test('tells what was done to the seed, the last as far as it has gone', () => {
  expect(life(`stock G2 2026-01-01, GA3 10 mg, 20 mL
soak X 2026-01-10 19:00, G2 10 mL, 24 h
lift X 2026-01-11 19:00
sow X 2026-01-11 19:10, 20 seeds, 18 C
count X 2026-01-19, 3
note X 2026-01-20, fine
chill X 2026-01-21, 4 C, 90 days`)).toBe('soaked 24 h in GA3 500 ppm (G2), sown 10 weeks ago at 18 C, 4 C for 63 of 90 days');
});

test('says that seed lies in a soak now, and until when', () => {
  const soak = 'soak X 2026-03-25 08:00, GA3 500 ppm, 24 h';
  expect(life(soak, '2026-03-25 13:00')).toBe('in GA3 500 ppm now (5 h so far, out 2026-03-26 08:00)');
  expect(life('soak X 2026-03-25 08:00, GA3 500 ppm', '2026-03-25 13:00')).toBe('in GA3 500 ppm now (5 h so far)');
  expect(life(soak, '2026-03-26 08:00')).toBe('soaked 24 h in GA3 500 ppm');
});

test('tells of plans as plans', () => {
  expect(life(`soak X 2026-03-28 08:00, water, 24 h
sow X 2026-03-30, regime cold
chill X 2026-04-01, 4 C, 90 days`)).toBe('to be soaked 24 h in water in 3 days, to be sown in 5 days under the regime cold, 4 C 90 days to come');
});

test('tells of seedlings, of a cut test and of the end', () => {
  expect(life(`scarify X 2026-01-01, nicked
sow X 2026-01-01
count X 2026-02-01, 8 germinated, 5 emerged
apply X 2026-03-01, GA3 100 ppm, 2 drops
pot X 2026-03-11, 5 seedlings
cut X 2026-03-24, 10 fresh, 2 empty
discard X 2026-03-25, done`)).toBe(
    'scarified 11 weeks ago, sown 11 weeks ago, given drops of GA3 100 ppm 3 weeks ago, potted (5 seedlings) 2 weeks ago, cut open (10 fresh, 2 empty) yesterday, discarded today');
});

test('tells a further portion from the same seed sown again', () => {
  expect(life('sow X 2026-03-01, 10 seeds\nsow X 2026-03-20, 10 seeds')).toBe('sown 3 weeks ago, more sown 5 days ago');
  expect(life('sow X 2026-01-01, 20 seeds\nchill X 2026-01-20, 4 C, 30 days\nsow X 2026-03-20, 20 seeds, 18 C'))
    .toBe('sown 11 weeks ago, 4 C for 59 days (30 planned), sown again 5 days ago at 18 C');
});

test('begins with what was done before the batch was split off', () => {
  expect(life('soak X 2026-01-01, water, 24 h\nsplit X 2026-01-03, A 10 seeds\nsow X/A 2026-03-24', '2026-03-25', 'X/A'))
    .toBe('soaked 24 h in water, sown yesterday');
});

test('is none where nothing was done', () => {
  expect(life('note X 2026-01-01, hard')).toBeUndefined();
});
