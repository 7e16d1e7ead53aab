/** How the solutions of the journal are made up, as steps that a person can follow. */
import type { Journal } from '../../journal/journal.ts';
import type { Solution } from '../../journal/solutions.ts';
import { isoOf } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { volumeInMl } from '../../solutions/amounts.ts';
import { recipeForDilution, recipeForPowder, type Recipe } from '../../solutions/recipe.ts';
import { signOf, strengthHeld } from '../../words/held.ts';

/** How a stock or a dilution is made up; undefined where the record does not tell enough. */
export function recipeOf(solution: Solution, journal: Journal): Recipe | undefined {
  const { entry, keeps, from, ppm, weighed: powder } = solution;
  if (!ppm.ok) return undefined;
  const { record, moment } = entry;
  const sign = signOf(solution, journal);
  const dates = { sign, made: moment && isoOf(moment.day), keepsUntil: keeps && isoOf(keeps.until) };
  const made = powder ? recipeForPowder(powder, dates) : dilution();
  return made?.ok ? made.value : undefined;

  function dilution() {
    const source = from === undefined ? undefined : journal.solution(from);
    const [taken, to] = [factOf(record, 'draw')?.volume?.value, factOf(record, 'to')?.value];
    if (!source?.agent || !source.ppm.ok || !taken || !to) return undefined;
    const [takenMl, toMl] = [volumeInMl(taken), volumeInMl(to)];
    const stockPpm = source.ppm.value;
    const stock = `${source.id} (${strengthHeld(source, journal)!})`;
    return recipeForDilution({ agent: source.agent, stock, stockPpm, takenMl, toMl }, dates);
  }
}
