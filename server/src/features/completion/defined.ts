/** The stocks and the regimes that a journal defines, in the order of their definitions. */
import { inJournalOrder } from '../../journal/journal-file.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Entry } from '../../journal/life.ts';
import type { Solution } from '../../journal/solutions.ts';
import { allOf, EVER } from '../gathered.ts';

const solutions = allOf((id, journal) => {
  const solution = journal.solution(id);
  return solution ? [solution] : [];
});

const regimes = allOf((id, journal) => {
  const definition = journal.lot(id) ? undefined : journal.definitionsOf(id)[0];
  return definition?.record.keyword === 'regime' ? [definition] : [];
});

export function stocksOf(journal: Journal): Solution[] {
  return inOrder(solutions(journal, EVER), ({ entry }) => entry);
}

export function regimesOf(journal: Journal): Entry[] {
  return inOrder(regimes(journal, EVER), entry => entry);
}

function inOrder<Item>(items: readonly Item[], entryOf: (item: Item) => Entry): Item[] {
  const byLine = new Map(items.map(item => [entryOf(item).line, item]));
  return inJournalOrder(byLine.keys()).map(line => byLine.get(line)!);
}
