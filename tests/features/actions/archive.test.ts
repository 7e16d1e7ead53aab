import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import { archiveAction } from '../../../server/src/features/actions/archive.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import { journal as arbitraryJournal } from '../../support/arbitrary-journal.ts';
import { readFixture, variantsOf } from '../../support/fixture.ts';
import { journalOf } from '../journals.ts';
import { applied, journalIn } from './applied.ts';
import { livesOf } from './lives.ts';

interface Moved {
  readonly title: string;
  readonly creates: string | undefined;
  readonly texts: Record<string, string>;
}

/** The title and the texts, the same in all variants. */
function moved(source: string, id = 'V'): Moved | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    const action = archiveAction(journal.lot(id)!, journal);
    if (!action) return undefined;
    const texts = applied(journal, action.edits);
    expect(livesOf(journalIn(texts))).toEqual(livesOf(journal));
    const plain = Object.entries(texts).map(([name, text]) =>
      [name, text.replaceAll('\r\n', '\n').replaceAll(/ ?🌱/g, '').trimEnd()] as const);
    return { title: action.title, creates: action.creates, texts: Object.fromEntries(plain) };
  });
  for (const other of others) expect(other).toEqual(first);
  return first;
}

function textsOf(source: string): Record<string, string> {
  return Object.fromEntries(readFixture(source).files.map(({ name, text }) => [name, text.trimEnd()]));
}

describe('a lot that is over', () => {
  test('moves to a new file beside its own, each record with its date and its remarks', () => {
    expect(moved(`
      --- winter/2025.germ
      # Winter
      lot V "Iris, dwarf", 9 seeds
        From a friend.
      lot W Veratrum album, 9 seeds

      day 2026-01-10
      sow V 19:00, 9 seeds

        It snowed.
      --- winter/2026.germ
      day 2026-02-01
      cut V, 9 dead

      day 2026-02-02
      sow W
    `)).toEqual({
      title: 'Move V, which is finished, to archive.germ (3 records)', creates: 'winter/archive.germ',
      texts: textsOf(`
        --- winter/2025.germ
        # Winter
        lot W Veratrum album, 9 seeds

        day 2026-01-10
        --- winter/2026.germ
        day 2026-02-02
        sow W
        --- winter/archive.germ
        # Finished lots

        lot V "Iris, dwarf", 9 seeds
          From a friend.
        sow V 2026-01-10 19:00, 9 seeds

          It snowed.
        cut V 2026-02-01, 9 dead
      `),
    });
  });

  test('follows what the file has already; above the first day line, which would date its split', () => {
    const source = (archive: string) => `
      --- a.germ
      lot V Veratrum, 9 seeds
      split V, A 9 seeds
      discard V/A 2026-01-10, soft
      --- archive.germ
      ${archive}
    `;
    const lines = 'lot V Veratrum, 9 seeds\n      split V, A 9 seeds\n      discard V/A 2026-01-10, soft';
    const archived = (archive: string) => moved(source(archive))?.texts['archive.germ'];
    expect(archived('lot U Iris\n      # the end')).toBe(textsOf(`
      lot U Iris
      # the end

      ${lines}
    `)['journal.germ']);
    expect(archived('lot U Iris\n      day 2025-01-01\n      sow U')).toBe(textsOf(`
      lot U Iris
      ${lines}

      day 2025-01-01
      sow U
    `)['journal.germ']);
    expect(archived('')).toBe(textsOf(`\n      ${lines}`)['journal.germ']);
    expect(moved(source(''))?.creates).toBeUndefined();
  });

  test('takes with it the day lines that have nothing else, but not the last of a file', () => {
    expect(moved(`
      --- a.germ
      lot V Veratrum, 9 seeds
      day 2026-01-10
      sow V

      day 2026-01-12
      count V, 0
      # Frost.

      day 2026-01-14
      discard V, soft
    `)?.texts['a.germ']).toBe('day 2026-01-12\n# Frost.\n\nday 2026-01-14');
  });

  test.each([
    ['it is not over', 'lot V Iris, 9 seeds\nsow V 2026-01-10'],
    ['a part of it is not', 'lot V Iris, 9 seeds\nsplit V, A 4 seeds\ndiscard V 2026-01-10'],
    ['a record of it cannot be read', 'lot V Iris, 9 seeds\nnote V 2026-01-09\ndiscard V 2026-01-10'],
    ['a record of it has no date', 'lot V Iris, 9 seeds\nsow V\ndiscard V 2026-01-10'],
    ['it is defined twice', 'lot V Iris, 9 seeds\nlot V Iris, 9 seeds\ndiscard V 2026-01-10'],
    ['a record is of a batch that is not there', 'lot V Iris, 9 seeds\nnote V/A 2026-01-10, x\ndiscard V 2026-01-10'],
    ['some of it is there already', '--- a.germ\nlot V Iris, 9 seeds\ndiscard V 2026-01-10\n--- archive.germ\nnote V 2026-01-11, x'],
    ['a picture would not be found', '--- a.germ\nlot V Iris, 9 seeds\ndiscard V 2026-01-10\n--- b/b.germ\nphoto V 2026-01-11, x.jpg'],
  ])('stays where %s', (_, source) => {
    expect(moved(source)).toBeUndefined();
  });
});

test('moving every lot that is over changes nothing that is known, loses no line and adds no problem', () => {
  fc.assert(fc.property(arbitraryJournal, ({ files, today }) => {
    let journal = journalIn(Object.fromEntries(files.map(({ name, text }) => [name, text])));
    const before = { lives: livesOf(journal), words: wordsOf(journal), codes: codesOf(journal, today) };
    for (const { id } of [...journal.lots()]) {
      const action = archiveAction(journal.lot(id)!, journal);
      if (!action) continue;
      journal = journalIn(applied(journal, action.edits));
      expect(journal.lot(id)!.definition.line.store.name).toBe('archive.germ');
    }
    expect({ lives: livesOf(journal), words: wordsOf(journal), codes: codesOf(journal, today) }).toEqual(before);
  }), { numRuns: 80 });
});

/** The lines without their dates, in no order. */
function wordsOf(journal: Journal): string[] {
  return [...journal.files.values()].flatMap(({ text }) => [...text].map(line => line.text))
    .filter(line => line !== '' && !line.startsWith('day ') && line !== '# Finished lots')
    .map(line => line.replace(/^([^,]*) \d{4}-\d\d-\d\d/, '$1')).sort();
}

function codesOf(journal: Journal, today: number): string[] {
  const book = new ProblemBook(journal);
  book.update({ day: today, minutes: undefined });
  return [...journal.files.keys()].flatMap(name => book.of(name).map(({ problem }) => problem.message)).sort();
}
