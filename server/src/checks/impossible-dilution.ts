import type { Journal } from '../journal/journal.ts';
import type { Solution } from '../journal/solutions.ts';
import { factOf, type Span } from '../model/record.ts';
import { exact, volumeInMl } from '../solutions/amounts.ts';
import { diluted } from '../solutions/dilution.ts';
import { found, type SolutionCheck } from './check.ts';

/** A dilution that nobody can make: from itself, to less than was taken, or after more others than can be reckoned. */
export const impossibleDilution: SolutionCheck = function* (solution, { journal }) {
  const reason = reasonOf(solution, journal);
  if (reason) yield found(solution.entry.line, 'impossible-dilution', reason.span, { why: reason.why });
};

function reasonOf(
  { id, circular, ppm, from, entry: { record } }: Solution, journal: Journal,
): { span: Span; why: string } | undefined {
  const draw = factOf(record, 'draw');
  const to = factOf(record, 'to');
  if (!draw || record.keyword !== 'dilute') return undefined;
  if (circular) return { span: draw.stock, why: `“${id}” is made from itself, directly or by way of others.` };
  if (!ppm.ok && ppm.refusal.code === 'too-many-dilutions' && journal.solution(from ?? '')?.ppm.ok) {
    return { span: draw.stock, why: ppm.refusal.message };
  }
  if (!draw.volume || !to) return undefined;
  // Of any strength: what matters is the volumes.
  const made = diluted(exact(1), volumeInMl(draw.volume.value), volumeInMl(to.value));
  return made.ok ? undefined : { span: to, why: made.refusal.message };
}
