/** A solution from a stock: C1 V1 = C2 V2. */
import type { Strength } from '../model/quantity.ts';
import { dissolvedMg, exact } from './amounts.ts';
import { assumption } from './assumptions.ts';
import { cautionsFor } from './cautions.ts';
import { drawFor } from './dilution.ts';
import { showMade, showMass, showStrength, showVolume } from './display.ts';
import { measure, stepError, stepErrorText, tooCoarse } from './measurable.ts';
import type { MixRefusal, MixWarning, PlannedWay } from './mix-plan.ts';
import { bottled, planned, refusal, resultOf, type Task, vesselFor, weighedAsWater } from './mix-task.ts';
import { type Refused, refused } from './outcome.ts';
import { insteadOfDrawing, type Remedy } from './remedies.ts';
import { draw, makeUp, trueStrength } from './steps.ts';
import { exceededSolubility } from './stock.ts';
import { strengthInPpm, strengthText } from './strength.ts';

export function planFromStock(task: Task, stock: Strength): PlannedWay | MixRefusal {
  const { agent, ppm, volumeMl, bench } = task;
  const stockPpm = strengthInPpm(stock, agent);
  if (!stockPpm.ok) return refusal(agent, stockPpm);
  const draws = drawFor(stockPpm.value, ppm, volumeMl);
  if (!draws.ok) {
    const stronger = draws.refusal.code === 'stronger-than-stock';
    const nearest = [useUndiluted(stock), ...(agent.form === 'powder' ? [fromPowder(task)] : [])];
    return refusal(agent, stronger ? tooStrong(task, stock) : draws, stronger ? nearest : []);
  }
  const { stockMl } = draws.value;
  const pipette = measure(stockMl, 'volume', bench);
  if (!pipette.measurable) {
    const nearest = insteadOfDrawing(task, stockPpm.value, pipette.least);
    return refusal(agent, refused('too-little-to-draw', pipette.message), nearest);
  }
  const vessel = vesselFor(task, volumeMl);
  if (!vessel.measurable) return refusal(agent, refused('too-little-to-draw', vessel.message));
  const warnings = exceededSolubility(stockPpm.value, agent) === undefined ? [] : [stockTooStrong(stock)];
  const cautions = cautionsFor('dilution', [agent]);
  const shared = { possible: true, assumptions: [assumption('volumes-add')], warnings, cautions } as const;
  const source = `the ${showMade(exact(stock.value), stock.unit).text} ${agent.word} stock`;
  const [taken, made] = [pipette.best, vessel.best];
  if (stockMl.equals(volumeMl)) {
    return {
      ...shared,
      method: 'undiluted',
      amounts: { stock: planned(stockMl, taken), makeUpTo: planned(volumeMl, taken) },
      result: resultOf(task, stockPpm.value, [], [], { counted: [], notCounted: ['strength of the stock'] }),
      steps: [
        draw(source, stockMl, taken),
        ...bottled(task, strengthText(ppm, task.asked.unit, agent), agent.form === 'liquid' ? 'bought' : 'stock'),
      ],
      inKitchen: undefined,
      alternatives: [],
    };
  }
  const truePpm = stockPpm.value.mul(taken.measured).div(made.measured);
  const waterMl = made.measured.sub(taken.measured);
  const off = trueStrength(truePpm, ppm, task.asked.unit, agent);
  const kitchen = measure(stockMl, 'volume', 'kitchen');
  return {
    ...shared,
    method: 'dilution',
    amounts: {
      stock: planned(stockMl, taken),
      water: showVolume(waterMl),
      makeUpTo: planned(volumeMl, made),
    },
    result: resultOf(task, truePpm, [stepError(taken)], [stepError(made)], {
      counted: [`draw to ${stepErrorText(taken)}`, `volume to ${stepErrorText(made)}`],
      notCounted: ['strength of the stock', ...weighedAsWater(taken, stockPpm.value, agent)],
    }),
    steps: [
      draw(source, stockMl, taken),
      makeUp(made.measured, waterMl, made),
      ...(off === undefined ? [] : [off]),
      ...bottled(task, strengthText(truePpm, task.asked.unit, agent), 'dilution'),
    ],
    inKitchen: kitchen.measurable
      ? undefined
      : {
        message: tooCoarse(stockMl, kitchen.finest) ?? kitchen.message,
        remedies: insteadOfDrawing({ ...task, bench: 'kitchen' }, stockPpm.value, kitchen.least),
      },
    alternatives: [],
  };
}

function tooStrong({ asked }: Task, stock: Strength): Refused {
  const text = `${asked.value} ${asked.unit} cannot be made from ${showStrength(exact(stock.value), stock.unit).text}: water only makes it weaker.`;
  return refused('stronger-than-stock', text);
}

function useUndiluted({ value, unit }: Strength): Remedy {
  const strength = showMade(exact(value), unit);
  return { kind: 'use-undiluted', text: `The nearest is the stock itself, undiluted: ${strength.text}.`, amounts: { strength } };
}

function fromPowder({ agent, ppm, volumeMl, asked }: Task): Remedy {
  const pure = showMass(dissolvedMg(ppm, volumeMl));
  const makeUpTo = showVolume(volumeMl);
  const text = `From powder: ${pure.text} of pure ${agent.word} made up to ${makeUpTo.text} is ${asked.value} ${asked.unit}.`;
  return { kind: 'from-powder', text, amounts: { pure, makeUpTo } };
}

function stockTooStrong({ value, unit }: Strength): MixWarning {
  const text = `A stock of ${showStrength(exact(value), unit).text} is more than dissolves in water. Check its label, and that it is clear.`;
  return { id: 'stock-above-solubility', text };
}
