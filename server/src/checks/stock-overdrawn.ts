import { ledger } from '../journal/solutions.ts';
import { isPositive, type Exact } from '../solutions/amounts.ts';
import { showVolume } from '../solutions/display.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { drawnSpan } from './draws.ts';

/** More taken from a stock than was made of it. Said once, where it runs out: what comes after can only follow. */
export const stockOverdrawn: SolutionCheck = function* (solution, _context, draws) {
  const { overdrawn } = ledger(solution, draws);
  if (!overdrawn || !solution.madeMl) return;
  const { entry, ml } = overdrawn.key;
  if (!ml) return;
  const left = leftText(ml.sub(overdrawn.missingMl), solution.madeMl);
  yield found(entry.line, 'stock-overdrawn', drawnSpan(entry, solution.id),
    { asked: showVolume(ml).text, stock: solution.id, left }, { related: [relatedTo(solution.entry, 'Made up here')] });
};

function leftText(left: Exact, made: Exact): string {
  const all = showVolume(made).text;
  if (left.equals(made)) return `only ${all} were made up`;
  return isPositive(left) ? `only ${showVolume(left).text} of the ${all} made up are left` : `nothing of the ${all} made up is left`;
}
