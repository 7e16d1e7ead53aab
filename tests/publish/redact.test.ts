import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Journal } from '../../server/src/journal/journal.ts';
import type { Private } from '../../server/src/model/privates.ts';
import { redacted } from '../../server/src/publish/redact.ts';
import { filledTables } from '../../server/src/tables/tables.ts';
import { readFixture } from '../support/fixture.ts';
import { anyJournal, sourceOf, tableOf } from '../tables/helpers.ts';

function textOf(journal: Journal): string {
  return [...journal.files.values()].map(({ name, text }) => `--- ${name}\n${[...text].map(line => line.text).join('\n')}`).join('\n');
}

function publicText(fixture: string, ...shown: Private[]): string {
  const source = sourceOf(readFixture(fixture).files);
  return textOf(redacted(source.journal, source.files, new Set(shown)));
}

const JOURNAL = `
  --- anna.germ
  # To Anna
  zone Europe/Vienna
  lot A-1 Iris alba, 20 seeds, from Anna, stored in the cellar, at shelf bag 3
    Her best plant.
  agent kelp, from the shop
  guide Iris, GA3 500 ppm, 24 h, source "Anna's book"
  note A-1 2026-01-02, ask Anna
  photo A-1 2026-01-02, anna/iris.jpg
  due A-1 2026-03-02, call Anna
  scarify A-1 2026-01-03, with Anna's file
  sow A-1 2026-01-04 19:10, 20 seeds, 18 C, in grit, at heated mat tray 4
  count A-1 2026-02-04, 3 germinated, 2 annas
  count A-1 31.2.2026, 3
  anna was here
  give A-1 2026-03-04, 2 seedlings, to Anna
  discard A-1 2026-04-04, ask Anna why
`;

describe('a journal without what is private', () => {
  it('has what was sown, done and counted, and no word of the rest', () => {
    expect(publicText(JOURNAL)).toBe(`--- 1.germ

zone Europe/Vienna
lot A-1 Iris alba, 20 seeds, at room a box 1

agent kelp
guide Iris, GA3 500 ppm, 24 h



scarify A-1 2026-01-03
sow A-1 2026-01-04 19:10, 20 seeds, 18 C, in grit, at room b box 2
count A-1 2026-02-04, 3 germinated, ?
count A-1 2026-02-30, 3, ?
?
give A-1 2026-03-04, 2 seedlings
discard A-1 2026-04-04
`);
  });

  it.each([
    ['places', ['stored in the cellar', 'at shelf bag 3', 'at heated mat tray 4']],
    ['remarks', ['Her best plant.', 'ask Anna', 'call Anna', 'with Anna\'s file', 'from the shop']],
    ['sources', ['from Anna', 'source "Anna\'s book"']],
    ['people', ['to Anna']],
    ['photos', ['anna/iris.jpg']],
  ] as const)('has %s where they are asked for', (what, texts) => {
    const [all, without] = [publicText(JOURNAL, what), publicText(JOURNAL)];
    for (const text of texts) {
      expect(all).toContain(text);
      expect(without).not.toContain(text);
    }
  });

  it('keeps places in one room together and tells them from others', () => {
    const places = publicText(`
      move A 2026-01-01, at heated mat tray 4
      move A 2026-01-02, at heated mat tray 5
      move A 2026-01-03, at Heated Mat, tray 4
      move A 2026-01-04, at tray 4
      move A 2026-01-05, at windowsill
    `);
    expect([...places.matchAll(/at (.*)/g)].map(([, place]) => place?.replace(', ?', ''))).toEqual([
      'room a box 1', 'room a box 2', 'room a box 3', 'box 4', 'room b box 5',
    ]);
  });

  it('says the same of seed: totals, measures, comparisons and strata, whatever the journal', () => {
    const numbers = (journal: Journal) => {
      const filled = filledTables([{ name: 'x', journal, files: [...journal.files.keys()], now: sourceOf([]).now }]);
      return ['batches', 'measures', 'comparisons', 'strata', 'observations'].map(name => {
        const { table, rows } = tableOf(filled, name);
        const told = table.fields.map(({ name: column }) => !['file', 'place', 'also_differs', 'sentence'].includes(column));
        return rows.map(row => row.filter((_, i) => told[i]));
      });
    };
    fc.assert(fc.property(anyJournal, files => {
      const { journal, files: names } = sourceOf(files);
      expect(numbers(redacted(journal, names, new Set()))).toEqual(numbers(journal));
    }), { numRuns: 60 });
  });
});
