/** The stocks and the regimes that a journal defines, in the order of their definitions. */
import { inOrderOf } from '../../journal/journal-file.ts';
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
  return inOrderOf(solutions(journal, EVER), ({ entry }) => entry.line);
}

export function regimesOf(journal: Journal): Entry[] {
  return inOrderOf(regimes(journal, EVER), ({ line }) => line);
}
