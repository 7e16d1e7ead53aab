/** What the records of the bench say as steps that a person can follow. */
import type { Journal } from '../../journal/journal.ts';
import type { Dose, Soak } from '../../journal/life.ts';
import { powderStock, type Solution } from '../../journal/solutions.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity, type Volume } from '../../model/quantity.ts';
import { factOf, type JournalRecord } from '../../model/record.ts';
import { volumeInMl } from '../../solutions/amounts.ts';
import { showStrength } from '../../solutions/display.ts';
import type { MixAnswer } from '../../solutions/mix-plan.ts';
import { planMix } from '../../solutions/mix.ts';
import { recipeForDilution, recipeForDrops, recipeForPowder, recipeForSoak, type Recipe } from '../../solutions/recipe.ts';
import type { StepId } from '../../solutions/steps.ts';

/** How a stock or a dilution is made up; undefined where the record does not tell enough. */
export function recipeOf({ entry, keeps, from }: Solution, journal: Journal): Recipe | undefined {
  const { record, moment } = entry;
  const dates = { made: moment && isoOf(moment.day), keepsUntil: keeps && isoOf(keeps.until) };
  const powder = from === undefined ? powderStock(record, journal.agents) : undefined;
  const made = powder ? recipeForPowder(powder, dates) : dilution();
  return made?.ok ? made.value : undefined;

  function dilution() {
    const source = from === undefined ? undefined : journal.solution(from);
    const [taken, to] = [factOf(record, 'draw')?.volume?.value, factOf(record, 'to')?.value];
    if (!source?.agent || !source.ppm.ok || !taken || !to) return undefined;
    const [takenMl, toMl] = [volumeInMl(taken), volumeInMl(to)];
    const stockPpm = source.ppm.value;
    const stock = `${source.id} (${showStrength(stockPpm, 'ppm').text})`;
    return recipeForDilution({ agent: source.agent, stock, stockPpm, takenMl, toMl }, dates);
  }
}

/** How seed is soaked, and before that how the liquid is made from powder where the soak names no stock. */
export function recipeOfSoak({ entry: { record }, doses }: Soak): Recipe {
  const agents = doses.flatMap(({ agent }) => agent ?? []);
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  const volume = volumeOf(record, doses);
  const soak = recipeForSoak({
    agents, volume, liquid: doses.map(liquidText).join(' and '),
    duration: duration ? printQuantity(duration) : undefined,
    until: until && isoOf(until.date.day),
    unmeasured: doses.some(({ fact }) => fact.unmeasured),
  });
  const plan = mixFor(doses, volume);
  return plan ? withMix(plan, soak) : soak;
}

/** How drops are given. */
export function recipeOfDrops(record: JournalRecord, doses: readonly Dose[]): Recipe {
  return recipeForDrops({
    agents: doses.flatMap(({ agent }) => agent ?? []),
    liquid: doses.map(liquidText).join(' and '),
    drops: factOf(record, 'drops')?.n.value,
    volume: volumeOf(record, doses),
  });
}

/** Example: 'G2', 'GA3 500 ppm' */
function liquidText({ fact }: Dose): string {
  return fact.strength ? `${fact.name.text} ${printQuantity(fact.strength.value)}` : fact.name.text;
}

function volumeOf(record: JournalRecord, doses: readonly Dose[]): Volume | undefined {
  return factOf(record, 'volume')?.value ?? (doses.length === 1 ? doses[0]!.fact.volume?.value : undefined);
}

/** Of one agent that is weighed; what several need together is no single plan. */
function mixFor(doses: readonly Dose[], volume: Volume | undefined): MixAnswer | undefined {
  const others = doses.filter(({ agent }) => agent?.role !== 'water');
  const [only] = others;
  if (!volume || !only?.agent || others.length > 1 || only.agent.form !== 'powder' || !only.fact.strength) return undefined;
  return planMix({ agent: only.agent, strength: only.fact.strength.value, volume, source: { kind: 'powder' } });
}

const making: ReadonlySet<StepId> = new Set(['weigh', 'dissolve', 'make-up', 'true-strength']);

function withMix(plan: MixAnswer, soak: Recipe): Recipe {
  if (!plan.possible) return { ...soak, tooSmall: { message: plan.message, remedies: plan.nearest } };
  return {
    ...soak,
    steps: [...plan.steps.filter(({ id }) => making.has(id)), ...soak.steps],
    tooSmall: plan.inKitchen,
    assumptions: plan.assumptions,
  };
}
