/** What the journal has to make a solution from: bottles of the agent, and packets of its powder. */
import { stockNow } from '../../calendar/left.ts';
import { ledger } from '../../journal/draws.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Solution } from '../../journal/solutions.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { printQuantity, type Mass, type Volume } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { isPositive, massInMg, volumeInMl, type Exact } from '../../solutions/amounts.ts';
import { showVolume } from '../../solutions/display.ts';
import { leftText, showAmount } from '../../solutions/left-text.ts';
import type { MixPlan, MixRefusal } from '../../solutions/mix-plan.ts';
import { usualStrength } from '../../solutions/strength.ts';
import { contentHeld, powderHeld } from '../../words/held.ts';
import type { MixTexts } from './request.ts';

/**
 * All of an agent that something is left of, with what is to know of each. First what has not passed its date: bottles,
 * then packets, the newest of these first; then what has.
 */
export function onShelf(journal: Journal, agent: string | undefined, today: Day): { id: string; text: string }[] {
  const made = ({ form, entry: { moment } }: Solution) => (form === 'powder' ? moment?.day ?? Number.MIN_SAFE_INTEGER : 0);
  const rank = (solution: Solution) => (pastSince(solution, today) === undefined ? 0 : 2) + (solution.form === 'powder' ? 1 : 0);
  return [...journal.solutions()]
    .filter(solution => solution.agent?.word === agent && canServe(solution))
    .sort((a, b) => rank(a) - rank(b) || made(b) - made(a))
    .flatMap(solution => {
      const stock = stockNow(solution, journal, { day: today, minutes: undefined });
      if (!stock || stock.emptied) return [];
      const { form } = solution;
      const past = pastSince(solution, today);
      const texts = [
        form === 'powder' ? powderHeld(solution) : contentHeld(solution, journal),
        stock.left && `${leftText(form, stock.left)} left`,
        past !== undefined && `past its date (was good until ${isoOf(past)})`,
      ];
      return [{ id: solution.id, text: texts.filter(Boolean).join(', ') }];
    });
}

/** Powder whose line cannot be read may have any purity. */
function canServe({ form, ppm, entry }: Solution): boolean {
  return form === 'powder' ? entry.line.content.problems.length === 0 : ppm.ok;
}

/** Its last good day, where that is over. */
export function pastSince({ keeps }: Solution, today: Day): Day | undefined {
  return keeps && keeps.until < today ? keeps.until : undefined;
}

/** What a person would type of a bottle or a packet; undefined where that is not known. */
export function textsOf(solution: Solution): Pick<MixTexts, 'from' | 'purity'> | undefined {
  if (!canServe(solution)) return undefined;
  const { form, ppm, agent } = solution;
  if (form !== 'powder') {
    const strength = ppm.ok && agent ? usualStrength(ppm.value, agent) : undefined;
    return strength && { from: `${strength.value} ${strength.unit}` };
  }
  const purity = factOf(solution.entry.record, 'purity');
  return { purity: purity && `${purity.percent} %${purity.form ? ` ${purity.form}` : ''}` };
}

/** Why a solution cannot be made from what too little is left of; undefined where there is enough. */
export function shortOf(
  { id, form, made }: Solution, { agent, amounts, asked }: MixPlan, journal: Journal,
): MixRefusal | undefined {
  const there = ledger({ made }, journal.accountOf(id)).left?.most;
  const taken = takenIn(form, amounts);
  if (!taken || !there || there.gte(taken)) return undefined;
  const wholeMl = volumeInMl(amounts.makeUpTo.measured as Volume);
  const left = showAmount(form, there);
  const most = showVolume(wholeMl.mul(there).div(taken));
  const text = `${left.text} of it makes ${most.text} of ${printQuantity(asked.strength)}.`;
  return {
    possible: false, agent, code: 'too-little-left',
    message: `It takes ${showAmount(form, taken).text} of ${id}, and ${left.text} of it is left.`,
    nearest: isPositive(there)
      ? [{ kind: 'less-volume', text, amounts: { stock: left, makeUpTo: most } }] : [],
  };
}

function takenIn(form: Solution['form'], { stock, powder }: MixPlan['amounts']): Exact | undefined {
  if (form === 'powder') return powder && massInMg(powder.measured as Mass);
  return stock && volumeInMl(stock.measured as Volume);
}
