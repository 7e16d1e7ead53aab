/** A solution of the journal as steps at the bench, in the amounts that the record has. */
import { counted } from '../model/counted.ts';
import type { Agent } from './agent.ts';
import { type Exact, isPositive, massInMg, volumeInMl } from './amounts.ts';
import type { Assumption } from './assumptions.ts';
import { type BenchWork, type Caution, cautionsFor } from './cautions.ts';
import { diluted } from './dilution.ts';
import { showVolume } from './display.ts';
import { measure, tooCoarse } from './measurable.ts';
import { known, type Outcome } from './outcome.ts';
import { insteadOfDrawing, insteadOfWeighing, type Remedy, type Wanted } from './remedies.ts';
import { dissolve, draw, halve, label, type LabelDates, makeUp, type Step, store, weigh, weighSomehow } from './steps.ts';
import { type PowderStock, stockFromPowder } from './stock.ts';
import { usualStrengthText } from './strength.ts';
import type { Bench } from './tools.ts';

export interface Recipe {
  readonly steps: readonly Step[];
  /** Why a tool is too coarse, and what to do instead. */
  readonly tooSmall: { readonly message: string; readonly remedies: readonly Remedy[] } | undefined;
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}

/**
 * Refused as stockFromPowder is. `bench` is what the steps may use; a kitchen is told where it cannot follow.
 */
export function recipeForPowder(
  stock: PowderStock,
  dates: LabelDates = {},
  bench: Bench = 'laboratory',
): Outcome<Recipe> {
  const made = stockFromPowder(stock);
  if (!made.ok) return made;
  const { agent, halved = 0 } = stock;
  const { ppm, powderMg, volumeMl, dissolvedMg, assumptions } = made.value;
  const wanted = { agent, ppm, volumeMl, bench };
  return known({
    steps: [
      halved > 0 ? halve(agent, massInMg(stock.mass), halved, powderMg) : weighing(stock, powderMg, bench),
      dissolve(agent),
      makeUp(volumeMl),
      label(agent, usualStrengthText(ppm, agent), dates),
      store(agent),
    ],
    tooSmall: halved > 0 ? undefined : tooSmallToWeigh(wanted, powderMg, dissolvedMg.div(powderMg)),
    assumptions,
    cautions: cautionsFor('powder', [agent]),
  });
}

function weighing({ agent, packet }: PowderStock, mg: Exact, bench: Bench): Step {
  const way = measure(mg, 'mass', bench);
  const isExact = way.measurable && way.best.error.equals(0);
  return isExact ? weigh(agent, mg, way.best, packet) : weighSomehow(agent, mg, packet);
}

function tooSmallToWeigh(wanted: Wanted, powderMg: Exact, share: Exact): Recipe['tooSmall'] {
  const way = measure(powderMg, 'mass', wanted.bench);
  if (!way.measurable) {
    return { message: way.message, remedies: insteadOfWeighing(wanted, share, way.least) };
  }
  const kitchen = measure(powderMg, 'mass', 'kitchen');
  if (kitchen.measurable) return undefined;
  const remedies = insteadOfWeighing({ ...wanted, bench: 'kitchen' }, share, kitchen.least);
  return { message: tooCoarse(powderMg, kitchen.finest) ?? kitchen.message, remedies };
}

export interface DilutionRecipe {
  readonly agent: Agent;
  /** The stock's name in the journal. */
  readonly stock: string;
  readonly stockPpm: Exact;
  readonly takenMl: Exact;
  readonly toMl: Exact;
}

/** Refused as diluted is. */
export function recipeForDilution(
  { agent, stock, stockPpm, takenMl, toMl }: DilutionRecipe,
  dates: LabelDates = {},
  bench: Bench = 'laboratory',
): Outcome<Recipe> {
  const ppm = diluted(stockPpm, takenMl, toMl);
  if (!ppm.ok) return ppm;
  const way = measure(takenMl, 'volume', bench);
  const wanted = { agent, ppm: ppm.value, volumeMl: toMl, bench };
  return known({
    steps: [
      drawing(stock, takenMl, bench),
      makeUp(toMl, toMl.sub(takenMl)),
      label(agent, usualStrengthText(ppm.value, agent), dates),
      store(agent),
    ],
    tooSmall: way.measurable || !isPositive(ppm.value)
      ? undefined
      : { message: way.message, remedies: insteadOfDrawing(wanted, stockPpm, way.least) },
    assumptions: [],
    cautions: cautionsFor('dilution', [agent]),
  });
}

/** With the tool that measures it without rounding, where the bench has one. */
export function drawing(what: string, ml: Exact, bench: Bench = 'laboratory'): Step {
  const way = measure(ml, 'volume', bench);
  return draw(what, ml, way.measurable && way.best.error.equals(0) ? way.best : undefined);
}

export interface SoakRecipe {
  readonly agents: readonly Agent[];
  /** What the seed lies in, as the journal names it: a stock, or an agent with its strength. */
  readonly liquid: string;
  readonly volume?: Parameters<typeof volumeInMl>[0] | undefined;
  /** In words: how long, or until when; undefined where the record does not say. */
  readonly duration: string | undefined;
  /** In words: the day, and the time where it is written. It goes before the duration. */
  readonly until?: string | undefined;
  /** A little powder on a damp towel. */
  readonly unmeasured: boolean;
}

export function recipeForSoak({ agents, liquid, volume, duration, until, unmeasured }: SoakRecipe): Recipe {
  const amount = volume === undefined ? liquid : `${showVolume(volumeInMl(volume)).text} of ${liquid}`;
  const bed = unmeasured
    ? `Put the seed in a damp paper towel with a little ${liquid} powder, in a closed bag.`
    : `Put the seed into ${amount}, and cover all of it.`;
  const end = until !== undefined ? `on ${until}` : duration !== undefined ? `after ${duration}` : 'at the end';
  return {
    steps: [
      { id: 'soak', text: bed },
      { id: 'label', text: 'Label it: the batch, the liquid, and when the soak began.' },
      { id: 'lift', text: `Lift it ${end}, rinse it with water, and note when.` },
    ],
    tooSmall: undefined,
    assumptions: [],
    cautions: cautionsOf(unmeasured ? 'unmeasured' : 'soak', agents),
  };
}

export interface DropsRecipe {
  readonly agents: readonly Agent[];
  readonly liquid: string;
  /** On each seedling. */
  readonly drops: number | undefined;
  /** In all. */
  readonly volume?: Parameters<typeof volumeInMl>[0] | undefined;
  readonly seedlings?: number | undefined;
}

export function recipeForDrops({ agents, liquid, drops, volume, seedlings }: DropsRecipe): Recipe {
  const amount = drops === undefined ? liquid : `${counted(drops, 'drop')} of ${liquid}`;
  const ml = volume && volumeInMl(volume);
  const each = ml && seedlings ? `, ${showVolume(ml.div(seedlings)).text} on each` : '';
  const inAll = ml ? `: ${showVolume(ml).text} in all${each}` : '';
  return {
    steps: [
      { id: 'drop', text: `Put ${amount} on the growing point of each seedling${inAll}.` },
      { id: 'compare', text: 'Leave some seedlings without drops to compare, and mark which are which.' },
    ],
    tooSmall: undefined,
    assumptions: [],
    cautions: cautionsOf('apply', agents),
  };
}

function cautionsOf(work: BenchWork, agents: readonly Agent[]): Caution[] {
  return agents.every(({ role }) => role === 'water') ? [] : cautionsFor(work, agents);
}
