/** How far the strength of a solution of the journal may be off, over all dilutions on the way to it. */
import type { Journal } from '../../journal/journal.ts';
import type { Solution } from '../../journal/solutions.ts';
import { factOf } from '../../model/record.ts';
import { dilutedUncertainty, type Uncertainty } from '../../solutions/uncertainty.ts';

/** After more dilutions than this nobody reads what each of them adds. */
const MOST = 20;

/** Undefined where the strength itself is not known. */
export function uncertaintyOf(solution: Solution, journal: Journal): Uncertainty | undefined {
  if (!solution.ppm.ok) return undefined;
  const row = [solution];
  let made: Solution | undefined = solution;
  while (made?.from !== undefined) {
    made = journal.solution(made.from);
    if (made) row.push(made);
    if (row.length > MOST) return { kind: 'none', why: `more than ${MOST} dilutions follow one another` };
  }
  let uncertainty: Uncertainty = made?.powder?.uncertainty
    ?? { kind: 'none', why: 'a label does not say how exact its strength is' };
  for (const { entry: { record } } of row.slice(0, -1).reverse()) {
    const [taken, to] = [factOf(record, 'draw')?.volume?.value, factOf(record, 'to')?.value];
    if (taken && to) uncertainty = dilutedUncertainty(uncertainty, taken, to);
  }
  return uncertainty;
}
