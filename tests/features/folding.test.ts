import { describe, expect, test } from 'vitest';
import { foldsOf } from '../../server/src/features/folding.ts';
import { variantsOf } from '../support/fixture.ts';
import { journalOf } from './journals.ts';

/** Each fold as its kind, its first and its last line, counted from 1. */
function folds(source: string): string[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    return [...journal.files.values()].flatMap(({ text }) => foldsOf(text)).map(({ kind, start, end }) => `${kind} ${start + 1}-${end + 1}`);
  });
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

describe('folding', () => {
  test('a heading folds what follows until the next one, empty lines before that left out', () => {
    expect(folds(`
      # Autumn
      lot VER-24 Veratrum nigrum
      lot VER-25 Veratrum album

      # Winter
      count VER-24 2026-01-19, 3
    `)).toEqual(['heading 1-3', 'heading 5-6']);
  });

  test('the lines of one comment make one heading', () => {
    expect(folds(`
      # Autumn
      # Written on the bench.
      lot VER-24 Veratrum nigrum
    `)).toEqual(['heading 1-3']);
    expect(folds(`
      ## January
      # 2027
      lot VER-24 Veratrum nigrum
    `)).toEqual(['heading 2-3']);
  });

  test('a heading of more # folds within one of fewer', () => {
    expect(folds(`
      # 2026
      ## January
      lot VER-24 Veratrum nigrum
      ## February
      lot VER-25 Veratrum album
      # 2027
      lot VER-26 Veratrum album
    `)).toEqual(['heading 1-5', 'heading 2-3', 'heading 4-5', 'heading 6-7']);
  });

  test('a rule of # is no heading, the title below it is', () => {
    expect(folds(`
      ######
      # 2026
      lot VER-24 Veratrum nigrum
    `)).toEqual(['heading 2-3']);
  });

  test('a day folds its records, until the next day or heading', () => {
    expect(folds(`
      day 2026-01-19
      count VER-24 3
      count VER-25 3

      day 2026-01-20
      count VER-24 3
      # Later
      count VER-24 2026-01-21, 3
    `)).toEqual(['day 1-3', 'day 5-6', 'heading 7-8']);
  });

  test('a record folds its remarks', () => {
    expect(folds(`
      count VER-24 2026-01-19, 3
        White and straight.
        Five of them.
      count VER-25 2026-01-19, 3

        Not the remark of a record, for a line is empty between.
      sowed VER-26
        This record has an error, and is still one.
    `)).toEqual(['remarks 1-3', 'remarks 7-8']);
  });

  test('remarks at the end of a file and of a day are folded too', () => {
    expect(folds(`
      day 2026-01-19
        Cold.
      count VER-24 3
        White and straight.
    `)).toEqual(['day 1-4', 'remarks 3-4']);
  });

  test('nothing is folded where nothing follows', () => {
    expect(folds(`
      # Autumn

      day 2026-01-19

      lot VER-24 Veratrum nigrum
    `)).toEqual(['heading 1-5', 'day 3-5']);
    expect(folds('# Autumn')).toEqual([]);
    expect(folds('')).toEqual([]);
  });
});
