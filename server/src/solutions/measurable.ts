/** Whether an amount can be measured, with what, and what then is really measured. */
import { type Exact, exact } from './amounts.ts';
import { showMass, showVolume, type Shown } from './display.ts';
import { type Bench, leastOf, leastText, type Tool, toolsFor } from './tools.ts';

export interface Measurement {
  readonly tool: Tool;
  /** How often the tool is filled; each time half a step may be missed. */
  readonly fillings: number;
  /** mg or mL, rounded to the tool's step */
  readonly measured: Exact;
  readonly shown: Shown;
  /** measured / wanted - 1 */
  readonly error: Exact;
}

export type Measurability =
  | { readonly measurable: true; readonly best: Measurement }
  | {
    readonly measurable: false;
    /** The finest tool there is, and the least that it measures (mg or mL). */
    readonly finest: Tool;
    readonly least: Exact;
    readonly message: string;
  };

/** To the nearest step of a tool; down or up where the other way would be too much. */
export type Rounding = 'nearest' | 'down' | 'up';

const ROUNDED: Readonly<Record<Rounding, (amount: Exact, step: Exact) => Exact>> = {
  nearest: (amount, step) => amount.roundTo(step),
  down: (amount, step) => amount.div(step).floor().mul(step),
  up: (amount, step) => amount.div(step).ceil().mul(step),
};

/**
 * An amount (mg or mL, above zero) on one tool; undefined when the tool is too coarse for it or too small.
 */
export function measureWith(amount: Exact, tool: Tool, rounding: Rounding = 'nearest'): Measurement | undefined {
  if (amount.lt(leastOf(tool)) || amount.gt(tool.most)) return undefined;
  const measured = ROUNDED[rounding](amount, tool.step);
  const error = measured.div(amount).sub(1);
  return { tool, fillings: fillingsOf(measured, tool), measured, shown: showOn(measured, tool), error };
}

/**
 * The handiest tool of a bench that measures an amount (mg or mL, above zero); one that measures it without
 * rounding goes before one that does not.
 */
export function measure(
  amount: Exact, measures: Tool['measures'], bench: Bench, rounding: Rounding = 'nearest',
): Measurability {
  const tools = toolsFor(measures, bench);
  const possible = tools.map(tool => measureWith(amount, tool, rounding)).filter(m => m !== undefined);
  const best = possible.find(({ error }) => error.equals(0)) ?? possible[0];
  if (best !== undefined) return { measurable: true, best };
  const largest = tools[0]!;
  if (amount.gt(largest.most)) return { measurable: true, best: inParts(amount, largest) };
  const finest = tools.at(-1)!;
  const wanted = showOn(amount, finest).text;
  const message = `${wanted} cannot be ${measures === 'mass' ? 'weighed' : 'measured'} on ${finest.name}: ` +
    `it takes ${leastText(finest)} or more.`;
  return { measurable: false, finest, least: leastOf(finest), message };
}

/** Why a tool cannot measure an amount; undefined when it can. */
export function tooCoarse(amount: Exact, tool: Tool): string | undefined {
  if (!amount.lt(leastOf(tool))) return undefined;
  const verb = tool.measures === 'mass' ? 'weighed' : 'measured';
  return `${showOn(amount, tool).text} cannot be ${verb} on ${tool.name}: it takes ${leastText(tool)} or more.`;
}

/** Example: 2.63 mL with a 1 mL syringe are 3 */
function fillingsOf(measured: Exact, { holds }: Tool): number {
  return Number(measured.div(holds).ceil().n);
}

/** Half a step of the tool for each filling, relative to what is measured. */
export function stepError({ tool: { step }, measured, fillings }: Measurement): Exact {
  return step.div(2).mul(fillings).div(measured);
}

/** Example: 'half a step of a 1 mL syringe marked every 0.01 mL, each of 3 times' */
export function stepErrorText({ tool: { name }, fillings }: Pick<Measurement, 'tool' | 'fillings'>): string {
  return `half a step of ${name}${fillings > 1 ? `, each of ${fillings} times` : ''}`;
}

/** Example: 'a 1 mL syringe marked every 0.01 mL, filled 3 times' */
export function toolText({ tool: { name }, fillings }: Pick<Measurement, 'tool' | 'fillings'>): string {
  return fillings > 1 ? `${name}, filled ${fillings} times` : name;
}

function inParts(amount: Exact, tool: Tool): Measurement {
  return { tool, fillings: fillingsOf(amount, tool), measured: amount, shown: showOn(amount, tool), error: exact(0) };
}

function showOn(amount: Exact, { measures, id }: Tool): Shown {
  return measures === 'mass' ? showMass(amount) : showVolume(amount, id === 'micropipette');
}
