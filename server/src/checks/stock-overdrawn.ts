import { ledger } from '../journal/draws.ts';
import type { Solution } from '../journal/solutions.ts';
import { isPositive, type Exact } from '../solutions/amounts.ts';
import { showAmount } from '../solutions/left-text.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { drawnSpan } from './draws.ts';

/** More is taken than is left. */
export const stockOverdrawn: SolutionCheck = function* (solution, { journal }) {
  const { made, form, id } = solution;
  const { overdrawn } = ledger(solution, journal.accountOf(id));
  const asked = overdrawn?.taken?.most;
  if (!overdrawn || !asked) return;
  const { entry } = overdrawn.key;
  const left = leftText(solution, asked.sub(overdrawn.missing), made);
  yield found(entry.line, 'stock-overdrawn', drawnSpan(entry, id),
    { asked: showAmount(form, asked).text, stock: id, left },
    { related: [relatedTo(solution.entry, form === 'powder' ? 'The packet' : 'Made up here')] });
};

function leftText({ form }: Solution, left: Exact, made: Exact | undefined): string {
  if (!made) return isPositive(left) ? `only ${showAmount(form, left).text} are left` : 'nothing is left';
  const all = showAmount(form, made).text;
  const madeUp = form === 'powder' ? 'in the packet' : 'made up';
  if (left.equals(made)) return form === 'powder' ? `only ${all} were in the packet` : `only ${all} were made up`;
  return isPositive(left) ? `only ${showAmount(form, left).text} of the ${all} ${madeUp} are left` : `nothing of the ${all} ${madeUp} is left`;
}
