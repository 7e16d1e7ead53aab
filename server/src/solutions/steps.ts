/** The steps of the bench in plain sentences. */
import type { StrengthUnit } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import type { Exact } from './amounts.ts';
import { percentText, showMass, showVolume, toNumber } from './display.ts';
import { type Measurement, toolText } from './measurable.ts';
import { strengthText } from './strength.ts';

export type StepId =
  | 'weigh'
  | 'halve'
  | 'dissolve'
  | 'draw'
  | 'make-up'
  | 'true-strength'
  | 'label'
  | 'store'
  | 'soak'
  | 'lift'
  | 'drop'
  | 'compare';

export interface Step {
  readonly id: StepId;
  readonly text: string;
}

/** What the label says beside agent and strength, as the caller writes dates. */
export interface LabelDates {
  /** Before a strength that is not known exactly: 'about ', 'at most '. */
  readonly sign?: string | undefined;
  readonly made?: string | undefined;
  readonly keepsUntil?: string | undefined;
}

/** `packet`: the name of the one that the powder comes out of, where the journal has it. */
export function weigh(
  agent: Agent, wantedMg: Exact, { shown, tool, measured }: Measurement, packet?: string,
): Step {
  const workedOut = measured.equals(wantedMg) ? '' : ` (worked out: ${showMass(wantedMg).text})`;
  return { id: 'weigh', text: `Weigh ${shown.text} of ${powderText(agent, packet)} on ${tool.name}${workedOut}.` };
}

/** For an amount that no tool of the bench can weigh. */
export function weighSomehow(agent: Agent, mg: Exact, packet?: string): Step {
  return { id: 'weigh', text: `Weigh ${showMass(mg).text} of ${powderText(agent, packet)}.` };
}

function powderText({ word }: Agent, packet: string | undefined): string {
  return `${word} powder${packet === undefined ? '' : ` (${packet})`}`;
}

export function halve(agent: Agent, packetMg: Exact, times: number, portionMg: Exact): Step {
  const packet = `the packet of ${agent.word} (${showMass(packetMg).text})`;
  const portion = showMass(portionMg).text;
  if (times === 0) return { id: 'halve', text: `Take the whole of ${packet}, and rinse it out with some of the water.` };
  const often = times === 1 ? 'once' : `${times} times`;
  const text = `Tip ${packet} on smooth paper, halve it by eye ${often}, and take one part: about ${portion}.`;
  return { id: 'halve', text };
}

export function dissolve({ dissolvesIn }: Agent): Step {
  const text = {
    alcohol: 'Wet the powder with a few drops of alcohol and stir until it has dissolved.',
    lye: 'Wet the powder with a few drops of dilute lye and stir until it has dissolved.',
    water: 'Stir the powder into some of the water until it has dissolved.',
  }[dissolvesIn];
  return { id: 'dissolve', text };
}

/** Powder into a solution that is there. */
export function stirInto(what: string, volumeMl: Exact): Step {
  return { id: 'dissolve', text: `Stir the powder into ${showVolume(volumeMl).text} of ${what} until it has dissolved.` };
}

/** `measurement` undefined: no tool of the bench measures it. */
export function draw(what: string, drawn: Exact, measurement: Measurement | undefined): Step {
  if (measurement === undefined) return { id: 'draw', text: `Take ${showVolume(drawn).text} of ${what}.` };
  const { shown, measured } = measurement;
  const workedOut = measured.equals(drawn) ? '' : ` (worked out: ${showVolume(drawn).text})`;
  return { id: 'draw', text: `Take ${shown.text} of ${what} with ${toolText(measurement)}${workedOut}.` };
}

/**
 * `waterMl` where a solution is diluted: how much water that is, which is said where it can be measured as well.
 * `measurement` where it is known what measures the whole.
 */
export function makeUp(volumeMl: Exact, waterMl?: Exact, measurement?: Measurement): Step {
  const volume = showVolume(volumeMl).text;
  const isTold = waterMl !== undefined && (!measurement || waterMl.mod(measurement.tool.step).equals(0));
  const water = isTold ? ` (${showVolume(waterMl).text} of water)` : '';
  const measured = measurement === undefined ? '' : ` Measure with ${toolText(measurement)}.`;
  return { id: 'make-up', text: `Make it up to ${volume} with water${water}, and mix well.${measured}` };
}

export function pourTogether(volumeMl: Exact): Step {
  return { id: 'make-up', text: `Pour them together and mix well: ${showVolume(volumeMl).text} in all.` };
}

/**
 * Undefined where what was measured gives just what was asked for. `justMl`: the volume that would give it.
 */
export function trueStrength(
  ppm: Exact,
  askedPpm: Exact,
  unit: StrengthUnit,
  agent: Agent,
  justMl?: Exact,
): Step | undefined {
  if (ppm.equals(askedPpm)) return undefined;
  const off = ppm.div(askedPpm).sub(1);
  const [real, asked] = [ppm, askedPpm].map(strength => strengthText(strength, unit, agent));
  const side = toNumber(off) > 0 ? 'above' : 'below';
  const instead = justMl === undefined ? '' : ` Made up to ${showVolume(justMl).text}, it would be exact.`;
  const text = `With these tools it comes out at ${real}, ${percentText(off.abs())} ${side} the ${asked} asked for.${instead}`;
  return { id: 'true-strength', text };
}

export function label(agent: Agent, strength: string, { sign = '', made, keepsUntil }: LabelDates): Step {
  const until = keepsUntil === undefined ? '' : `, good until ${keepsUntil}`;
  return { id: 'label', text: `Label it: ${agent.word} ${sign}${strength}, ${made ?? 'and the date'}${until}.` };
}

/** `keeps` tells how long, where that is known. */
export function store(agent: Agent, keeps?: string): Step {
  return { id: 'store', text: [storeText(agent), keeps, agent.keeping].filter(text => text !== undefined).join(' ') };
}

/** Without how long it keeps. */
export function storeText({ givesOffGas }: Agent): string {
  return `Keep it cold, dark and ${givesOffGas ? 'loosely closed' : 'closed'}.`;
}
