import { describe, expect, test } from 'vitest';
import { batchPathAt } from '../../server/src/features/batch-at.ts';
import { neighbourOf, recordsAt, type Direction } from '../../server/src/features/neighbours.ts';
import { variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf } from './journals.ts';

/** Where one comes to from the mark `here`, step by step: the lines of the records, without their dates. */
function walk(source: string, direction: Direction): string[] {
  const walks = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    const steps: string[] = [];
    let at = cursorOf(fixture, 'here');
    for (;;) {
      const found = neighbourOf(journal, at.file, at.position, direction);
      if (!found?.place) return [...steps, found ? `${found.path} ends` : 'nothing'];
      const { file, line, start, end } = found.place;
      const { text } = journal.files.get(file)!.text.at(line);
      steps.push(`${file} ${text.replace(/ 🌱/, '')} (${text.slice(start, end)})`);
      at = { file, position: { line, character: start } };
    }
  });
  for (const other of walks) expect(other).toEqual(walks[0]);
  return walks[0]!;
}

const others = `
      --- a.germ
      lot V-1 Veratrum nigrum, 60 seeds
      split V-1, A 24 seeds, B 24 seeds
      soak V-1/B 2026-01-10 19:00, water, 24 h
      count V-1/A 2026-02-01, 3`;

test('all records of a batch come in the order of time, with their days, from its split on', () => {
  const all = variantsOf(`${others}
      --- b.germ
      day 2026-01-11
      sow V-1/A 19:30
              ^ here
        Two dishes.
      note V-1/A, undated
      count V-1/A 2026-01-25, 1
  `).map(({ fixture }) => {
    const { file, position } = cursorOf(fixture, 'here');
    const found = recordsAt(journalOf(fixture), file, position)!;
    return [found.path, found.here, ...found.records.map(({ when, text, place }) => `${place.file} ${when ?? 'no date'} | ${text.replace(/ 🌱/, '')}`)];
  });
  for (const each of all) {
    expect(each).toEqual([
      'V-1/A', 1, 'a.germ no date | split V-1, A 24 seeds, B 24 seeds', 'b.germ 2026-01-11 19:30 | sow V-1/A 19:30',
      'b.germ 2026-01-11 | note V-1/A, undated', 'b.germ 2026-01-25 | count V-1/A 2026-01-25, 1', 'a.germ 2026-02-01 | count V-1/A 2026-02-01, 3',
    ]);
  }
});

describe('from record to record of a batch', () => {
  test('leads the way of time, through all files, from the split on', () => {
    expect(walk(`${others}
      --- b.germ
      lot M-1 Iris, 20 seeds
      count M-1 2026-02-08, 1
      day 2026-01-11
      sow V-1/A 19:30
              ^ here
        Two dishes.
      sow V-1/B 19:30
      count V-1/A 2026-02-08, 1
    `, 'next')).toEqual(['a.germ count V-1/A 2026-02-01, 3 (V-1/A)', 'b.germ count V-1/A 2026-02-08, 1 (V-1/A)', 'V-1/A ends']);
  });

  test('leads back to where the batch was split off, and stays with it there', () => {
    expect(walk(`${others}
      --- b.germ
      sow V-1/A 2026-01-11
      count V-1/A 2026-02-08, 1
        Up at last.
               ^ here
    `, 'previous')).toEqual([
      'a.germ count V-1/A 2026-02-01, 3 (V-1/A)', 'b.germ sow V-1/A 2026-01-11 (V-1/A)',
      'a.germ split V-1, A 24 seeds, B 24 seeds (A)', 'V-1/A ends',
    ]);
  });

  test('of a lot leads through its own records, wherever on the line one stands', () => {
    expect(walk(`
      lot V-1 Iris, 60 seeds
      ^^^ here
      split V-1, A 24 seeds
      note V-1 2026-03-01, the rest in the tin
      note V-1/A 2026-02-01, damp
    `, 'next')).toEqual(['journal.germ split V-1, A 24 seeds (V-1)', 'journal.germ note V-1 2026-03-01, the rest in the tin (V-1)', 'V-1 ends']);
  });

  test('stays with the younger lot on the name of one that it replaces', () => {
    expect(walk(`
      lot OLD-1 Iris, 60 seeds
      lot NEW-1 Iris, 60 seeds, replaces OLD-1
                                            ^ here
      sow NEW-1 2026-01-01
    `, 'next')).toEqual(['journal.germ sow NEW-1 2026-01-01 (NEW-1)', 'NEW-1 ends']);
  });

  test('leads nowhere from a line that is about none', () => {
    expect(walk('day 2026-01-11\n        ^ here\n', 'next')).toEqual(['nothing']);
  });
});

describe('a batch is meant', () => {
  test.each([
    ['in the part that names its lot', 'count V-1/A 2026-02-01, 3\n       ^ here', 'V-1/A'],
    ['behind its name', 'count V-1/A 2026-02-01, 3\n          ^ here', 'V-1/A'],
    ['on what was counted of it', 'count V-1/A 2026-02-01, 3 rotted\n                         ^ here', 'V-1/A'],
    ['by its name in a split', 'split V-1, A 24 seeds, B 24 seeds\n           ^ here', 'V-1/A'],
    ['on its seeds in a split', 'split V-1, A 24 seeds, B 24 seeds\n                            ^ here', 'V-1/B'],
    ['by the name of the lot', 'split V-1, A 24 seeds\n       ^ here', 'V-1'],
    ['by the name of a lot that was replaced', 'lot N-1 Iris, replaces OLD-1\n                           ^ here', 'OLD-1'],
    ['not on its date', 'count V-1/A 2026-02-01, 3\n             ^ here', undefined],
    ['not on the plant', 'lot V-1 Iris\n         ^ here', undefined],
  ])('%s', (_, source, path) => {
    for (const { fixture } of variantsOf(`lot OLD-1 Iris\n${source}\n`)) {
      const { file, position } = cursorOf(fixture, 'here');
      expect(batchPathAt(journalOf(fixture), file, position)).toBe(path);
    }
  });
});
