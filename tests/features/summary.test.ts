import { expect, test } from 'vitest';
import { summaryOf, summaryOfAll } from '../../server/src/features/summary.ts';
import { Journal } from '../../server/src/journal/journal.ts';

function journalWith(...texts: string[]): Journal {
  const journal = new Journal();
  texts.forEach((text, i) => journal.set(`${i}.germ`, text));
  return journal;
}

test('a journal is summed up by its files, its lots, and the kinds of records in it', () => {
  const journal = journalWith('lot V-1 Iris\nlot V-2 Iris\nstock G1 2026-01-01, GA3 20 mg, 20 mL\n', 'count V-1, 3\nlot V-1 again\n# lot X\n');
  expect(summaryOf(journal)).toEqual({ files: 2, lots: 2, keywords: ['lot', 'stock', 'count'] });
});

test('an empty journal has nothing in it, and several are added up', () => {
  expect(summaryOf(journalWith())).toEqual({ files: 0, lots: 0, keywords: [] });
  const all = summaryOfAll([journalWith('lot V-1 Iris\n'), journalWith('lot V-1 Iris\nsow V-1 2026-01-11\n')]);
  expect(all).toEqual({ files: 2, lots: 2, keywords: ['lot', 'sow'] });
});
