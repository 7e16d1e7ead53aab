import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { expectAllMarked } from './marked.ts';

const now = '2026-04-01';

/** The lines that the only problem of a journal speaks of, and what it says of each. */
function placesIn(text: string): string[] {
  const journal = new Journal();
  journal.set('a.germ', text);
  const book = new ProblemBook(journal);
  book.update({ day: dayOfIso(now)!, minutes: undefined });
  return book.of('a.germ')[0]!.related.map(({ line, message }) => `${line.number} ${message}`);
}

describe('more seeds sown than there are', () => {
  test('are marked at the number, one above what stayed', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      day 2026-03-10
      sow VER-24/A, 24 seeds
      sow VER-24/B, 25 seeds
                    ^^^^^^^^ sown-exceeds-seeds
      sow VER-24, 12 seeds
    `, { now });
  });

  test('may be a second portion', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-10, 30 seeds
      sow VER-24 2026-03-17, 30 seeds
      lot VER-25 Veratrum nigrum, 60 seeds
      sow VER-25 2026-03-10, 30 seeds
      sow VER-25 2026-03-17, 31 seeds
                             ^^^^^^^^ sown-exceeds-seeds
      sow VER-25 2026-03-18
          ^^^^^^ sown-exceeds-seeds
    `, { now });
  });

  test('may be the same line again', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 24 seeds
      sow VER-24 2026-03-10, 24 seeds
      sow VER-24 2026-03-10, 24 seeds
                             ^^^^^^^^ sown-exceeds-seeds
    `, { now });
  });

  test('point to where the seeds come from, and to what was sown before', () => {
    expect(placesIn('lot V Veratrum, 9 seeds\nsow V 2026-03-10, 10 seeds')).toEqual(['0 Where its seeds come from']);
    expect(placesIn('lot V Veratrum, 9 seeds\nsow V 2026-03-10\nsow V 2026-03-11, 1 seed'))
      .toEqual(['0 Where its seeds come from', '1 Sown before']);
  });

  test('are none when the rest is sown, and none of a lot whose number nobody wrote', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-10, 30 seeds
      sow VER-24 2026-03-17
      lot VER-25 Veratrum nigrum
      sow VER-25 2026-03-10, 3000 seeds
      sow VER-25 2026-03-17, 3000 seeds
    `, { now });
  });

  test('are none when seed that did not come is soaked and sown again', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      sow VER-24/A 2026-01-10, 24 seeds
      count VER-24/A 2026-03-01, 1, 1 rotted
      soak VER-24/A 2026-03-07 19:00, water, 24 h
      sow VER-24/A 2026-03-08 19:00, 22 seeds
      sow VER-24/A 2026-03-09, 22 seeds
                               ^^^^^^^^ sown-exceeds-seeds
    `, { now });
  });

  test('are none when some germinated in the cold, whether those are sown with the others or not', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 48 seeds
      split VER-24, A 24 seeds, B 24 seeds
      day 2026-01-10
      chill VER-24/A, 4 C, 60 days
      chill VER-24/B, 4 C, 60 days
      day 2026-03-10
      count VER-24/A 09:00, 3
      count VER-24/B 09:00, 3
      sow VER-24/A 10:00, 24 seeds
      sow VER-24/B 10:00, 21 seeds
    `, { now });
  });

  test('are what rotted before', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 24 seeds
      chill VER-24 2026-01-10, 4 C, 60 days
      count VER-24 2026-03-10 09:00, 2 rotted
      sow VER-24 2026-03-10 10:00, 23 seeds
                                   ^^^^^^^^ sown-exceeds-seeds
    `, { now });
  });

  test('are not judged where a number cannot be read', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 24 seeds
      sow VER-24 2026-03-10, 2O seeds
                              ^ unknown-fact
      sow VER-24 2026-03-11, 24 seeds
    `, { now });
  });
});
