import { ledger } from '../journal/draws.ts';
import { factOf } from '../model/record.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { isFound } from '../solutions/ledger.ts';
import { showAmount } from '../solutions/left-text.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** Balances, syringes and labels differ by so much of what there was at first. Common practice, no source. */
const TOLERANCE = exact(0.05);

/** More is left than there can be after all that was taken. */
export const moreLeftThanPossible: SolutionCheck = function* (solution, { journal }) {
  const { id, form, made } = solution;
  const show = (amount: Exact) => showAmount(form, amount).text;
  for (const { key: { entry, amount }, tooMuch } of ledger(solution, journal.accountOf(id)).entries) {
    if (!isFound(amount) || !tooMuch.gt((made ?? amount.found).mul(TOLERANCE))) continue;
    const most = amount.found.sub(tooMuch);
    const fact = factOf(entry.record, form === 'powder' ? 'mass' : 'volume') ?? subjectOf(entry);
    yield found(entry.line, 'more-left-than-possible', fact, {
      written: show(amount.found), stock: id,
      most: most.equals(0) ? 'nothing was left by then' : `at most ${show(most)} ${most.equals(1) ? 'was' : 'were'} there`,
    }, { related: [relatedTo(solution.entry, form === 'powder' ? 'The packet' : 'Made up here')] });
  }
};
