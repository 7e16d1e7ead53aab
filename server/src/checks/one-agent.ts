import { factOf, factsOf } from '../model/record.ts';
import { found, type SolutionCheck } from './check.ts';

/** A second agent in a stock, which would be left out of all sums. */
export const oneAgent: SolutionCheck = function* ({ entry: { line, record } }) {
  if (record.keyword !== 'stock') return;
  const draw = factOf(record, 'draw');
  for (const { start, end } of factsOf(record, 'substance').slice(draw ? 0 : 1)) {
    yield found(line, 'repeated-fact', { start, end }, { fact: draw ? 'the powder of a stock' : 'the agent of a stock' });
  }
};
