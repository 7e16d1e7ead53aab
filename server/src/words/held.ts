/** How strong a bottle is, in words. */
import { halvedOrigin, shelfOf } from '../journal/doses.ts';
import type { Journal } from '../journal/journal.ts';
import type { Solution } from '../journal/solutions.ts';
import { factOf } from '../model/record.ts';
import { showStrength, strengthSign, type Shown } from '../solutions/display.ts';
import { fullStrength, usualStrength } from '../solutions/strength.ts';

/**
 * Undefined where the strength is not known.
 *
 * Example: '1000 ppm'; 'about 1000 ppm' where powder was halved by eye on the way to it, 'at most 1000 ppm' where it
 * was made from what was past its date
 */
export function strengthHeld(solution: Solution, journal: Journal): string | undefined {
  const shown = shownStrength(solution);
  return shown && `${signOf(solution, journal)}${shown.text}`;
}

/** What stands before its strength, where that is not known exactly. */
export function signOf(solution: Solution, journal: Journal): string {
  return strengthSign({ isAtMost: solution.staleSource !== undefined, isAbout: isHeldByEye(solution, journal) });
}

/** Undefined where it is not known. What a label says is shown in full, what was worked out with fewer digits. */
export function shownStrength({ agent, ppm, entry: { record } }: Solution): Shown<'ppm' | '%'> | undefined {
  if (!ppm.ok) return undefined;
  if (!agent) return showStrength(ppm.value, 'ppm');
  return (factOf(record, 'substance')?.strength ? fullStrength : usualStrength)(ppm.value, agent);
}

/** Whether powder was halved by eye on the way to it. */
export function isHeldByEye(solution: Solution, journal: Journal): boolean {
  return halvedOrigin(solution, shelfOf(journal)) !== undefined;
}

/** Example: 'GA3 1000 ppm', 'GA3 about 250 ppm', 'GA3 of unknown strength', 'agent unknown' */
export function contentHeld(solution: Solution, journal: Journal): string {
  const { agent } = solution;
  return agent ? `${agent.word} ${strengthHeld(solution, journal) ?? 'of unknown strength'}` : 'agent unknown';
}

/** What is in a packet. Example: 'GA3 powder, purity 90 %' */
export function powderHeld({ agent, entry: { record } }: Solution): string {
  const purity = factOf(record, 'purity');
  return `${agent?.word ?? 'unknown'} powder${purity ? `, purity ${purity.percent} %${purity.form ? ` ${purity.form}` : ''}` : ''}`;
}
